#include "roll/reading/scan_tint.h"

#include "roll/reading/scan_doubt.h"
#include "sensitometry/read_tone.h"
#include "tint/picture_hues.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace fogline {

namespace {

Tint unknown_tint(Unknown why) {
  Tint tint;
  tint.kind = why;
  tint.density = why;
  tint.detection_limit = why;
  return tint;
}

/// Standard uncertainty of a channel's clear density against another's.
double coloured_doubt(const DoubtSources& doubt, double clear, bool lossy,
                      const ColouredShares& coloured) {
  const double level =
      std::hypot(doubt.zero_density, std::hypot(doubt.noise_density, doubt.evenness_density));
  const double zero =
      std::hypot(coloured.zero * level, coloured.clipping * doubt.clipped_shift_density);
  const double curve = std::hypot(
      coloured.curve * doubt.transfer_share * clear,
      coloured.compression * (doubt.highlight_compression - 1.0) * clear / coverage_factor_95);
  return std::hypot(std::hypot(zero, curve), lossy ? coloured.lossy_density : 0.0);
}

TintLimits limits_of(const ScanInfo& info, const std::vector<StripReading>& readings,
                     const ColouredShares& coloured) {
  TintLimits limits;
  for (const StripReading& reading : readings) {
    if (!reading.clear || reading.zero == ZeroSource::none) {
      continue;
    }
    const DoubtSources doubt = doubt_of(info, reading);
    limits.zero_doubt = std::max(
        limits.zero_doubt, coloured_doubt(doubt, reading.clear->visual, info.lossy, coloured));
    limits.curve_share = std::max(limits.curve_share, doubt.transfer_share);
    limits.coloured_stray =
        std::max(limits.coloured_stray, coloured.stray * doubt.stray_transmittance);
    limits.angle_share_95 = std::max(limits.angle_share_95, doubt.angle_share_95);
  }
  return limits;
}

/// Takes the trust that a finished picture's colours don't deserve off what is told.
Tint weakened(Tint tint, double trust) {
  tint.confidence *= trust;
  for (TintComponent& component : tint.components) {
    component.confidence *= trust;
  }
  return tint;
}

/// Why no strip showed its colour.
Unknown reason_of_no_signs(const std::vector<StripReading>& readings) {
  const bool clipped = std::any_of(readings.begin(), readings.end(), [](const StripReading& r) {
    return r.zero == ZeroSource::none && !r.zero_samples.empty();
  });
  return clipped ? Unknown::lamp_colour_clipped : Unknown::lamp_colour_hidden;
}

std::vector<FilmExtent> areas_of_clear_film(const ClearFilm& film) {
  std::vector<FilmExtent> areas;
  for (const ClearPatch& patch : film.used) {
    areas.push_back(patch.area);
  }
  return areas;
}

std::vector<FilmExtent> areas_of_pictures(const FilmStrip& film) {
  std::vector<FilmExtent> areas;
  for (const FilmFrame& frame : film.frames) {
    if (const auto area = tone_area(frame); area && !frame.inferred) {
      areas.push_back(*area);
    }
  }
  return areas;
}

}  // namespace

Tint scan_tint(const ScanInfo& info, const FilmLayout& layout,
               const std::vector<StripReading>& readings,
               const std::optional<PerChannel<double>>& base_tint, bool densities,
               const ScanKnowledge& knowledge) {
  if (!densities) {
    return unknown_tint(Unknown::no_densities);
  }
  if (info.channels != most_channels) {
    return unknown_tint(Unknown::grey_scan);
  }
  if (std::any_of(readings.begin(), readings.end(),
                  [](const StripReading& reading) { return !reading.colours; })) {
    return unknown_tint(Unknown::lamp_colour_clipped);
  }
  std::vector<TintSigns> signs;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const StripReading& reading = readings[i];
    if (!reading.clear) {
      continue;
    }
    const std::vector<FilmExtent> clear = areas_of_clear_film(*reading.clear);
    const std::vector<FilmExtent> pictures = areas_of_pictures(layout.strips[i]);
    // Needs no bare light: a lamp's colour is the same over the whole picture.
    if (shows_colour_film(reading.density, clear, pictures,
                          knowledge.tints.colour_film_hues_density)) {
      return unknown_tint(Unknown::colours_in_pictures);
    }
    if (reading.zero == ZeroSource::none) {
      continue;
    }
    if (auto strip = read_tint_signs(reading.density, clear, pictures)) {
      signs.push_back(*strip);
    }
  }
  if (signs.empty()) {
    return unknown_tint(reason_of_no_signs(readings));
  }
  TintLimits limits = limits_of(info, readings, knowledge.devices.coloured);
  limits.base_tint = base_tint;
  Tint tint = judge_tint(signs, limits, knowledge.tints);
  const bool finished =
      std::any_of(readings.begin(), readings.end(),
                  [&](const StripReading& reading) { return looks_finished(info, reading); });
  return finished ? weakened(std::move(tint), knowledge.tints.finished_picture_trust) : tint;
}

}  // namespace fogline
