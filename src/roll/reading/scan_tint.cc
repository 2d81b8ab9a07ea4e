#include "roll/reading/scan_tint.h"

#include "roll/reading/scan_doubt.h"
#include "sensitometry/read_tone.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Share of the doubt of zero that the channels don't have in common: lamp and bulge are nearly
/// grey (common practice, no source; the bench's false alarms hold it).
constexpr double coloured_share_of_zero = 0.25;
/// Clipping stops each channel at another light.
constexpr double coloured_share_of_clipping = 0.5;
/// The tone curve is one for all channels, but it is met at another height where the lamp isn't
/// white, and it errs differently there (common practice, no source).
constexpr double coloured_share_of_curve = 0.3;
/// A display curve that flattens near the top code flattens the brightest channel most: what it
/// does to clear film may be in one channel only.
constexpr double coloured_share_of_compression = 1.0;
/// Stray light has nearly the lamp's colour.
constexpr double coloured_share_of_stray = 0.2;
/// Lossy compression stores colour coarsely.
constexpr double lossy_density = 0.006;

Tint unknown_tint(Unknown why) {
  Tint tint;
  tint.kind = why;
  tint.density = why;
  tint.detection_limit = why;
  return tint;
}

/// Standard uncertainty of a channel's clear density against another's.
double coloured_doubt(const DoubtSources& doubt, double clear, bool lossy) {
  const double level =
      std::hypot(doubt.zero_density, std::hypot(doubt.noise_density, doubt.evenness_density));
  const double zero = std::hypot(coloured_share_of_zero * level,
                                 coloured_share_of_clipping * doubt.clipped_shift_density);
  const double curve =
      std::hypot(coloured_share_of_curve * doubt.transfer_share * clear,
                 coloured_share_of_compression * (doubt.highlight_compression - 1.0) * clear /
                     coverage_factor_95);
  return std::hypot(std::hypot(zero, curve), lossy ? lossy_density : 0.0);
}

TintLimits limits_of(const ScanInfo& info, const std::vector<StripReading>& readings) {
  TintLimits limits;
  limits.zero_doubt = 0.0;
  limits.curve_share = 0.0;
  for (const StripReading& reading : readings) {
    if (!reading.clear || reading.zero == ZeroSource::none) {
      continue;
    }
    const DoubtSources doubt = doubt_of(info, reading);
    limits.zero_doubt =
        std::max(limits.zero_doubt, coloured_doubt(doubt, reading.clear->visual, info.lossy));
    limits.curve_share = std::max(limits.curve_share, doubt.transfer_share);
    limits.coloured_stray =
        std::max(limits.coloured_stray, coloured_share_of_stray * doubt.stray_transmittance);
    limits.angle_share_95 = std::max(limits.angle_share_95, doubt.angle_share_95);
  }
  return limits;
}

/// Why no strip showed its colour.
Unknown reason_of_no_signs(const std::vector<StripReading>& readings) {
  const bool clipped = std::any_of(readings.begin(), readings.end(), [](const StripReading& r) {
    return r.zero == ZeroSource::none && !r.zero_samples.empty();
  });
  return clipped ? Unknown::lamp_colour_clipped : Unknown::lamp_colour_hidden;
}

}  // namespace

Tint scan_tint(const ScanInfo& info, const FilmLayout& layout,
               const std::vector<StripReading>& readings,
               const std::optional<PerChannel<double>>& base_tint, bool densities) {
  if (!densities) {
    return unknown_tint(Unknown::no_densities);
  }
  if (info.channels != most_channels) {
    return unknown_tint(Unknown::grey_scan);
  }
  std::vector<TintSigns> signs;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const StripReading& reading = readings[i];
    if (reading.zero == ZeroSource::none || !reading.clear) {
      continue;
    }
    std::vector<FilmExtent> clear;
    for (const ClearPatch& patch : reading.clear->used) {
      clear.push_back(patch.area);
    }
    std::vector<FilmExtent> pictures;
    for (const FilmFrame& frame : layout.strips[i].frames) {
      if (const auto area = tone_area(frame); area && !frame.inferred) {
        pictures.push_back(*area);
      }
    }
    if (auto strip = read_tint_signs(reading.density, clear, pictures)) {
      signs.push_back(*strip);
    }
  }
  if (signs.empty()) {
    return unknown_tint(reason_of_no_signs(readings));
  }
  TintLimits limits = limits_of(info, readings);
  limits.base_tint = base_tint;
  return judge_tint(signs, limits);
}

}  // namespace fogline
