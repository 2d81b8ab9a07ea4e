#include "roll/reading/scan_fitness.h"

#include "roll/reading/physical_limits.h"
#include "roll/reading/scan_doubt.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace fogline {

namespace {

/// Clear film with more than this share of its pixels at the top code tells nothing.
constexpr double clear_clipped_share = 0.5;
/// Bare light with more than this share at the top code is a doubtful zero.
constexpr double zero_clipped_share = 0.005;
/// Pieces without any clear film in a picture of which this share stands at the top code are frames
/// whose base was clipped away.
constexpr double clipped_picture_share = 0.15;
/// A resolution tag that differs from the perforations by more is wrong.
constexpr double tag_error_share = 0.03;

bool has_frames(const FilmLayout& layout) {
  return std::any_of(layout.strips.begin(), layout.strips.end(),
                     [](const FilmStrip& strip) { return !strip.frames.empty(); });
}

bool has_perforations(const FilmLayout& layout) {
  return std::any_of(layout.strips.begin(), layout.strips.end(),
                     [](const FilmStrip& strip) { return !strip.perforations.empty(); });
}

/// What no film can read, where a strip reads so.
std::optional<CautionKind> impossible(const FitnessEvidence& evidence) {
  for (std::size_t i = 0; i < evidence.readings.size(); ++i) {
    const StripReading& reading = evidence.readings[i];
    if (lies_below_support(evidence.info, reading, evidence.films)) {
      return CautionKind::below_light_path;
    }
    if (pictures_below_clear_film(evidence.info, evidence.layout.strips[i], reading)) {
      return CautionKind::below_clear_film;
    }
  }
  return std::nullopt;
}

/// Only the picture's own border bounds what was taken for film.
bool fills_the_picture(const FilmLayout& layout) {
  return std::all_of(layout.strips.begin(), layout.strips.end(), [](const FilmStrip& strip) {
    return strip.surround == Surround::image_border;
  });
}

/// Why the scan must be refused, if it must.
std::optional<CautionKind> refusal(const FitnessEvidence& evidence) {
  const FilmLayout& layout = evidence.layout;
  const std::vector<StripReading>& readings = evidence.readings;
  if (layout.polarity == Polarity::inverted) {
    return CautionKind::inverted;
  }
  const bool clipped_base =
      std::any_of(readings.begin(), readings.end(), [](const StripReading& reading) {
        return reading.clear && reading.clear_clipped > clear_clipped_share;
      });
  const bool any_clear =
      std::any_of(readings.begin(), readings.end(),
                  [](const StripReading& reading) { return reading.clear.has_value(); });
  const bool clipped_round_frames =
      !any_clear && !layout.strips.empty() && evidence.clipped_pixels_share > clipped_picture_share;
  if (clipped_base || clipped_round_frames) {
    return CautionKind::base_clipped;
  }
  if (layout.strips.empty()) {
    return evidence.wedge_alone ? CautionKind::wedge_alone : CautionKind::no_film;
  }
  if (!has_frames(layout) && !has_perforations(layout)) {
    return fills_the_picture(layout) ? CautionKind::no_film : CautionKind::no_frames;
  }
  if (!any_clear) {
    return CautionKind::no_clear_film;
  }
  return impossible(evidence);
}

double greatest_zero_clip(const std::vector<StripReading>& readings) {
  double clipped = 0.0;
  for (const StripReading& reading : readings) {
    clipped = std::max(clipped, reading.zero_clipped);
  }
  return clipped;
}

std::vector<Caution> cautions_about_zero(const FitnessEvidence& evidence, DensitiesAbove above) {
  const auto caution = [](CautionKind kind) {
    return std::vector<Caution>{{Severity::caution, fact_of(kind)}};
  };
  if (above == DensitiesAbove::base) {
    const bool sampled =
        std::any_of(evidence.readings.begin(), evidence.readings.end(),
                    [](const StripReading& reading) { return !reading.zero_samples.empty(); });
    return caution(sampled ? CautionKind::bare_light_clipped : CautionKind::bare_light_hidden);
  }
  if (greatest_zero_clip(evidence.readings) > zero_clipped_share) {
    return caution(CautionKind::bare_light_partly_clipped);
  }
  return {};
}

bool any_finished(const FitnessEvidence& evidence) {
  return std::any_of(
      evidence.readings.begin(), evidence.readings.end(),
      [&](const StripReading& reading) { return looks_finished(evidence.info, reading); });
}

std::vector<Caution> cautions_about_scan(const FitnessEvidence& evidence) {
  const ScanInfo& info = evidence.info;
  std::vector<Caution> cautions;
  const auto add = [&](Severity severity, CautionKind kind) {
    cautions.push_back({severity, fact_of(kind)});
  };
  if (std::any_of(evidence.readings.begin(), evidence.readings.end(),
                  [](const StripReading& reading) { return !reading.colours; })) {
    add(Severity::caution, CautionKind::channel_clipped);
  }
  if (info.bits <= 8) {
    add(Severity::caution, CautionKind::eight_bit);
  }
  if (any_finished(evidence) || (info.camera && info.lossy)) {
    add(Severity::caution, CautionKind::camera_display_curve);
  }
  if (info.channels == 1) {
    add(Severity::note, CautionKind::grey_scan);
  }
  const std::optional<double>& seen_scale = evidence.layout.pixels_per_mm;
  if (info.tag_pixels_per_mm && seen_scale && has_perforations(evidence.layout) &&
      std::abs(*info.tag_pixels_per_mm / *seen_scale - 1.0) > tag_error_share) {
    add(Severity::note, CautionKind::resolution_tag_wrong);
  }
  if (evidence.zero.unevenness_density &&
      *evidence.zero.unevenness_density > evidence.devices.strong_unevenness_density) {
    add(Severity::note, CautionKind::uneven_light);
  }
  if (evidence.veiling_glare &&
      evidence.veiling_glare->value > evidence.devices.strong_stray_share) {
    add(Severity::caution, CautionKind::glare_strong);
  } else if (!evidence.veiling_glare) {
    add(Severity::note, info.transfer.kind == TransferKind::scanner
                            ? CautionKind::glare_of_calibration
                            : CautionKind::glare_unknown);
  }
  return cautions;
}

Fitness fitness_of_told(const FitnessEvidence& evidence, DensitiesAbove above) {
  const ScanInfo& info = evidence.info;
  const Known<ScanCalibration>& calibration = evidence.calibration;
  if (above == DensitiesAbove::base) {
    return Fitness::relative;
  }
  if (info.transfer.source == TransferSource::assumed || info.bits <= 8 || info.lossy ||
      greatest_zero_clip(evidence.readings) > zero_clipped_share ||
      (calibration && calibration->shape_only) || any_finished(evidence) ||
      evidence.zero.source == ZeroSource::scanner_file) {
    return Fitness::indicative;
  }
  return calibration && calibration->same_settings ? Fitness::measured : Fitness::comparable;
}

}  // namespace

FitnessJudgement judge_fitness(const FitnessEvidence& evidence) {
  FitnessJudgement judged;
  const bool above_light =
      std::any_of(evidence.readings.begin(), evidence.readings.end(),
                  [](const StripReading& reading) { return reading.zero != ZeroSource::none; });
  judged.densities_above = above_light ? DensitiesAbove::light_path : DensitiesAbove::base;
  if (const std::optional<CautionKind> refused = refusal(evidence)) {
    judged.cautions = {{Severity::unfit, fact_of(*refused)}};
    return judged;
  }
  if (!evidence.info.transfer_known) {
    judged.fitness = Fitness::marks_only;
    judged.cautions = {{Severity::unfit, fact_of(CautionKind::transfer_unknown)}};
    return judged;
  }
  judged.fitness = fitness_of_told(evidence, judged.densities_above);
  judged.cautions = cautions_about_zero(evidence, judged.densities_above);
  for (Caution& caution : cautions_about_scan(evidence)) {
    judged.cautions.push_back(std::move(caution));
  }
  return judged;
}

}  // namespace fogline
