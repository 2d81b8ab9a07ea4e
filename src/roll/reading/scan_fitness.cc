#include "roll/reading/scan_fitness.h"

#include <algorithm>
#include <cmath>

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

void set_unfit(ScanMeasurement& scan, CautionKind kind) {
  scan.fitness = Fitness::unfit;
  add_caution(scan, {Severity::unfit, fact_of(kind)});
}

/// True where the scan must be refused; the reason is then among its cautions.
bool is_refused(ScanMeasurement& scan, const FilmLayout& layout,
                const std::vector<StripReading>& readings, double clipped_pixels_share) {
  if (layout.polarity == Polarity::inverted) {
    set_unfit(scan, CautionKind::inverted);
    return true;
  }
  const bool clipped_base =
      std::any_of(readings.begin(), readings.end(), [](const StripReading& reading) {
        return reading.clear && reading.clear_clipped > clear_clipped_share;
      });
  const bool nothing_told =
      !has_perforations(layout) &&
      std::none_of(readings.begin(), readings.end(),
                   [](const StripReading& reading) { return reading.clear.has_value(); });
  const bool clipped_round_frames =
      nothing_told && !layout.strips.empty() && clipped_pixels_share > clipped_picture_share;
  if (clipped_base || clipped_round_frames) {
    set_unfit(scan, CautionKind::base_clipped);
    return true;
  }
  if (layout.strips.empty() || (!has_frames(layout) && !has_perforations(layout))) {
    set_unfit(scan, layout.strips.empty() ? CautionKind::no_film : CautionKind::no_frames);
    return true;
  }
  const bool any_clear =
      std::any_of(readings.begin(), readings.end(),
                  [](const StripReading& reading) { return reading.clear.has_value(); });
  if (!any_clear) {
    set_unfit(scan, CautionKind::no_clear_film);
    return true;
  }
  return false;
}

void caution_about_zero(ScanMeasurement& scan, const std::vector<StripReading>& readings) {
  double clipped = 0.0;
  bool sampled = false;
  for (const StripReading& reading : readings) {
    clipped = std::max(clipped, reading.zero_clipped);
    sampled = sampled || !reading.zero_samples.empty();
  }
  if (scan.densities_above == DensitiesAbove::base) {
    if (sampled) {
      add_caution(scan, {Severity::caution, fact_of(CautionKind::bare_light_clipped)});
    } else {
      add_caution(scan, {Severity::caution, fact_of(CautionKind::bare_light_hidden)});
    }
  } else if (clipped > zero_clipped_share) {
    add_caution(scan, {Severity::caution, fact_of(CautionKind::bare_light_partly_clipped)});
  }
}

void caution_about_scan(ScanMeasurement& scan, const FilmLayout& layout,
                        const DeviceKnowledge& devices) {
  if (scan.info.bits <= 8) {
    add_caution(scan, {Severity::caution, fact_of(CautionKind::eight_bit)});
  }
  if (scan.info.camera && scan.info.lossy) {
    add_caution(scan, {Severity::caution, fact_of(CautionKind::camera_display_curve)});
  }
  if (scan.info.channels == 1) {
    add_caution(scan, {Severity::note, fact_of(CautionKind::grey_scan)});
  }
  if (scan.info.tag_pixels_per_mm && layout.pixels_per_mm && has_perforations(layout) &&
      std::abs(*scan.info.tag_pixels_per_mm / *layout.pixels_per_mm - 1.0) > tag_error_share) {
    add_caution(scan, {Severity::note, fact_of(CautionKind::resolution_tag_wrong)});
  }
  if (scan.zero.unevenness_density &&
      *scan.zero.unevenness_density > devices.strong_unevenness_density) {
    add_caution(scan, {Severity::note, fact_of(CautionKind::uneven_light)});
  }
  if (scan.veiling_glare && scan.veiling_glare->value > devices.strong_stray_share) {
    add_caution(scan, {Severity::caution, fact_of(CautionKind::glare_strong)});
  } else if (!scan.veiling_glare && scan.info.transfer.kind == TransferKind::scanner) {
    add_caution(scan, {Severity::note, fact_of(CautionKind::glare_of_calibration)});
  } else if (!scan.veiling_glare) {
    add_caution(scan, {Severity::note, fact_of(CautionKind::glare_unknown)});
  }
}

}  // namespace

void add_caution(ScanMeasurement& scan, const Caution& caution) {
  const bool known =
      std::any_of(scan.cautions.begin(), scan.cautions.end(),
                  [&](const Caution& other) { return other.fact.kind == caution.fact.kind; });
  if (!known) {
    scan.cautions.push_back(caution);
  }
}

void judge_fitness(ScanMeasurement& scan, const FilmLayout& layout,
                   const std::vector<StripReading>& readings, double clipped_pixels_share,
                   const DeviceKnowledge& devices) {
  const bool above_light =
      std::any_of(readings.begin(), readings.end(),
                  [](const StripReading& reading) { return reading.zero != ZeroSource::none; });
  scan.densities_above = above_light ? DensitiesAbove::light_path : DensitiesAbove::base;
  if (is_refused(scan, layout, readings, clipped_pixels_share)) {
    return;
  }
  if (!scan.info.transfer_known) {
    scan.fitness = Fitness::marks_only;
    add_caution(scan, {Severity::unfit, fact_of(CautionKind::transfer_unknown)});
    return;
  }
  double clipped = 0.0;
  for (const StripReading& reading : readings) {
    clipped = std::max(clipped, reading.zero_clipped);
  }
  const bool assumed = scan.info.transfer.source == TransferSource::assumed;
  if (!above_light) {
    scan.fitness = Fitness::relative;
  } else if (assumed || scan.info.bits <= 8 || scan.info.lossy || clipped > zero_clipped_share ||
             (scan.calibration && scan.calibration->shape_only) ||
             scan.zero.source == ZeroSource::scanner_file) {
    scan.fitness = Fitness::indicative;
  } else if (scan.calibration && scan.calibration->same_settings) {
    scan.fitness = Fitness::measured;
  } else {
    scan.fitness = Fitness::comparable;
  }
  caution_about_zero(scan, readings);
  caution_about_scan(scan, layout, devices);
}

}  // namespace fogline
