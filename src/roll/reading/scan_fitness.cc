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

void set_unfit(ScanMeasurement& scan, const char* code, const std::string& message) {
  scan.fitness = Fitness::unfit;
  add_caution(scan, code, Severity::unfit, message);
}

/// True where the scan must be refused; the reason is then among its cautions.
bool is_refused(ScanMeasurement& scan, const FilmLayout& layout,
                const std::vector<StripReading>& readings, double clipped_pixels_share) {
  if (layout.polarity == Polarity::inverted) {
    set_unfit(scan, "inverted",
              "The perforations are dark and the film's clear base is darker than its picture: the "
              "scan was turned into a positive, with a curve of its own. Scan it again as a "
              "transparent positive, with every automatic improvement off.");
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
    set_unfit(scan, "base-clipped",
              "The film's clear base stands at the top code: levels were stretched until the "
              "thinnest film became white, and its density is lost. Scan again with automatic "
              "levels off and less exposure, so that the bare window reads 80 to 95 % of full "
              "scale.");
    return true;
  }
  if (layout.strips.empty() || (!has_frames(layout) && !has_perforations(layout))) {
    set_unfit(scan, "no-negative",
              layout.strips.empty()
                  ? "No film was found: neither perforations nor a strip of a known width nor "
                    "frames between clear borders. Scan the negative as a transparency, with some "
                    "millimetres of bare light or rebate around the frames."
                  : "Pieces of film were found, but neither perforations nor frames between clear "
                    "borders, so nothing can be said of base, light or development. If this is a "
                    "strip of negatives, scan it with its rebate and some bare light in sight.");
    return true;
  }
  const bool any_clear =
      std::any_of(readings.begin(), readings.end(),
                  [](const StripReading& reading) { return reading.clear.has_value(); });
  if (!any_clear) {
    set_unfit(scan, "no-clear-film",
              "No unexposed film is in sight, neither rebate nor a gap between frames, so there is "
              "nothing to measure densities from. Scan again with the frame's borders in sight.");
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
      add_caution(scan, "bare-light-clipped", Severity::caution,
                  "The bare light stands at the top code, so its true level is lost: densities are "
                  "given above the film's own base. Scan again with less exposure, so that the "
                  "bare light reads 80 to 95 % of full scale.");
    } else {
      add_caution(scan, "bare-light-hidden", Severity::caution,
                  "No bare light path is in sight, so densities are given above the film's own "
                  "base, and base plus fog can't be told. Leave the perforations or some "
                  "millimetres of empty window in sight.");
    }
  } else if (clipped > zero_clipped_share) {
    add_caution(scan, "bare-light-partly-clipped", Severity::caution,
                "Part of the bare light stands at the top code; the zero of density is doubtful. "
                "Scan again with a little less exposure.");
  }
}

void caution_about_scan(ScanMeasurement& scan, const FilmLayout& layout,
                        const DeviceKnowledge& devices) {
  if (scan.info.bits <= 8) {
    add_caution(scan, "eight-bit", Severity::caution,
                "Eight bits a channel are coarse in dense film: trust densities to about 1.5. Save "
                "16 bits.");
  }
  if (scan.info.camera && scan.info.lossy) {
    add_caution(scan, "camera-display-curve", Severity::caution,
                "A camera's finished picture bends its tone curve, most of all near white, and "
                "nobody says how: small densities may read up to three times too low. Save the raw "
                "picture, or a linear one.");
  }
  if (scan.info.channels == 1) {
    add_caution(scan, "grey-scan", Severity::note,
                "The scan is grey: the colour of the clear film can't be judged. Scan in colour, "
                "even black-and-white film.");
  }
  if (scan.info.tag_pixels_per_mm && layout.pixels_per_mm && has_perforations(layout) &&
      std::abs(*scan.info.tag_pixels_per_mm / *layout.pixels_per_mm - 1.0) > tag_error_share) {
    add_caution(scan, "resolution-tag-wrong", Severity::note,
                "The file's resolution doesn't fit the film's perforations; the perforations were "
                "believed.");
  }
  if (scan.zero.unevenness_density &&
      *scan.zero.unevenness_density > devices.strong_unevenness_density) {
    add_caution(scan, "uneven-light", Severity::note,
                "The light is uneven over the film. Its course along the perforations was taken "
                "out; what it does between them isn't seen.");
  }
  if (scan.veiling_glare && scan.veiling_glare->value > devices.strong_stray_share) {
    add_caution(scan, "glare-strong", Severity::caution,
                "Much stray light reaches the sensor. It was taken away as far as the scan shows "
                "it; dense film is read less surely. Mask the light around the film.");
  } else if (!scan.veiling_glare && scan.info.transfer.kind == TransferKind::scanner) {
    add_caution(scan, "glare-unknown", Severity::note,
                "Nothing opaque is in sight, so the calibration's share of stray light was taken "
                "away. A bit of opaque tape beside the film would tell this scan's own.");
  } else if (!scan.veiling_glare) {
    add_caution(scan, "glare-unknown", Severity::note,
                "Nothing opaque is in sight, so stray light could not be measured; a usual amount "
                "was taken away, and dense film is less sure. A bit of opaque tape beside the film "
                "would tell.");
  }
}

}  // namespace

void add_caution(ScanMeasurement& scan, const char* code, Severity severity,
                 const std::string& message) {
  const bool known = std::any_of(scan.cautions.begin(), scan.cautions.end(),
                                 [&](const Caution& caution) { return caution.code == code; });
  if (!known) {
    scan.cautions.push_back({code, severity, message});
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
    add_caution(scan, "transfer-unknown", Severity::unfit,
                "The file doesn't say whether its codes are linear light or a display curve of it, "
                "and the picture fits both, so no density can be told. Say which with --transfer "
                "(linear or srgb), or save the scan with its colour profile.");
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
