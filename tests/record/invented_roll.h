#pragma once

#include <fogline/record/record_json.h>

#include <string>
#include <utility>

// A roll that was never on film: every number below is invented.

namespace fogline::invented {

inline Quantity density(double value, double u95) {
  Quantity quantity;
  quantity.value = value;
  quantity.u95 = u95;
  return quantity;
}

inline Outline box_outline(OutlineKind kind, const BoxPx& box, int number) {
  Outline outline;
  outline.kind = kind;
  outline.strip = 1;
  outline.number = number;
  outline.points = {{box.x, box.y},
                    {box.x + box.width, box.y},
                    {box.x + box.width, box.y + box.height},
                    {box.x, box.y + box.height}};
  return outline;
}

inline FrameMeasurement frame(int number, double shadow, double middle, double highlight) {
  FrameMeasurement frame;
  frame.number = number;
  frame.strip = 1;
  frame.box_px = {100.0 + 380.0 * (number - 1), 55.0, 360.0, 240.0};
  frame.corners_px = {{{frame.box_px.x, 55.0},
                       {frame.box_px.x + 360.0, 55.0},
                       {frame.box_px.x + 360.0, 295.0},
                       {frame.box_px.x, 295.0}}};
  frame.tone.shadow = density(shadow, 0.034);
  frame.tone.middle = density(middle, 0.047);
  frame.tone.highlight = density(highlight, 0.12);
  frame.tone.range = density(highlight - shadow, 0.11);
  frame.tone.paper_range = highlight - shadow;
  return frame;
}

inline StripMeasurement strip() {
  StripMeasurement strip;
  strip.number = 1;
  strip.format = FilmFormat::f135;
  strip.box_px = {0.0, 0.0, 1300.0, 350.0};
  strip.rotation_deg = -0.4;
  strip.perforations = 54;
  return strip;
}

/// Three frames on one strip of 135 film, 10 pixels a millimetre, 8 bits.
inline ScanMeasurement scan(std::string file) {
  ScanMeasurement scan;
  scan.info.file = std::move(file);
  scan.info.width_px = 1300;
  scan.info.height_px = 350;
  scan.info.bits = 8;
  scan.info.samples_per_pixel = 3;
  scan.info.channels = 3;
  scan.info.transfer = {TransferKind::srgb, std::nullopt, TransferSource::assumed};
  scan.pixels_per_mm = 10.0;
  scan.zero.source = ZeroSource::perforations;
  scan.zero.unevenness_density = 0.021;
  scan.fitness = Fitness::indicative;
  scan.veiling_glare = density(0.008, 0.003);
  scan.density_limit = 2.4;
  scan.cautions.push_back({Severity::caution, fact_of(CautionKind::transfer_assumed)});
  BaseFog base_fog;
  base_fog.visual = density(0.284, 0.031);
  base_fog.channels = {{density(0.29, 0.03), density(0.28, 0.03), density(0.31, 0.04)}};
  base_fog.area_mm2 = 212.0;
  scan.base_fog = base_fog;
  scan.strips.push_back(strip());
  scan.strips.front().base_fog = base_fog;
  scan.frames = {frame(1, 0.35, 0.71, 1.32), frame(2, 0.41, 0.83, 1.42),
                 frame(3, 0.38, 0.62, 1.36)};
  for (const FrameMeasurement& each : scan.frames) {
    scan.outlines.push_back(box_outline(OutlineKind::frame, each.box_px, each.number));
  }
  scan.outlines.push_back(box_outline(OutlineKind::strip, scan.strips.front().box_px, 0));
  scan.leader = Unknown::no_leader;
  scan.edge_print = Unknown::no_edge_print;
  return scan;
}

inline RollMeasurement roll(std::string file = "strip.tif") {
  RollMeasurement roll;
  roll.scans.push_back(scan(std::move(file)));
  RollMedians medians;
  medians.frames = 3;
  medians.shadow = density(0.38, 0.034);
  medians.middle = density(0.71, 0.047);
  medians.highlight = density(1.36, 0.12);
  medians.range = density(0.98, 0.12);
  medians.net_shadow = density(0.10, 0.02);
  medians.net_middle = density(0.43, 0.04);
  medians.net_highlight = density(1.08, 0.12);
  roll.medians = medians;
  roll.contrast.contrast_index = Unknown::no_target;
  roll.contrast.density_range = density(0.98, 0.12);
  return roll;
}

/// A scan in which nothing can be measured.
inline RollMeasurement unfit_roll() {
  RollMeasurement roll;
  ScanMeasurement scan;
  scan.info.file = "white.png";
  scan.info.width_px = 40;
  scan.info.height_px = 30;
  scan.info.bits = 8;
  scan.info.samples_per_pixel = 1;
  scan.info.channels = 1;
  scan.cautions.push_back({Severity::unfit, fact_of(CautionKind::no_film)});
  roll.scans.push_back(scan);
  return roll;
}

}  // namespace fogline::invented
