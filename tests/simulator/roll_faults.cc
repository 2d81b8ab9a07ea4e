#include "simulator/roll_faults.h"

#include "simulator/device_sampling.h"
#include "simulator/layout_sampling.h"

#include <algorithm>
#include <cmath>

namespace filmsim {
namespace {

constexpr double kLog10OfStop = 0.30103;
constexpr double kUsualContrast = 0.58;
constexpr double kExposureSdStops = 1.0;
constexpr double kContrastSd = 0.20;
// Places a well-made roll as the trade's table has it: shadow 0.20 to 0.40 net, highlight 1.05 to
// 1.35 (common practice, no source), more light than the simulator's plain meter gives.
constexpr double kPlacementStops = 0.7;
// Lenses of home use and the camera's inside take about 0.4 off the subject's log range (Stroebel
// et al., Basic Photographic Materials and Processes, from memory).
constexpr double kLeastFlare = 0.02;
constexpr double kGreatestFlare = 0.07;
// What a roll's subjects share: tourists' noon or a grey week in town.
constexpr double kHabitSdStops = 0.45;
// With the simulator's own scatter of the meter and of scenes about it, shadows of frames vary by
// one stop, ranges by 1.2 stops (common practice, no source).
constexpr double kFrameSdStops = 0.5;
constexpr double kLogRangeSdOfFrames = 0.45;
// Net density of the print at usual development: 25 % by stock, 15 % by batch.
constexpr double kPrintDensity = 1.0;
constexpr double kPrintStockSd = 0.25;
constexpr double kPrintBatchSd = 0.15;
constexpr double kFoggedShare = 0.05;
constexpr double kNotExposedShare = 0.03;
constexpr double kNotDevelopedShare = 0.03;

void sample_development(FilmStock& stock, RollFaults& faults, Random& random) {
  CurveSettings& curve = stock.curve;
  const double usual_maximum = random.uniform(2.2, 3.4);
  faults.contrast_index =
      std::clamp(kUsualContrast * std::exp(random.normal(0.0, kContrastSd)), 0.30, 1.1);
  // The print was exposed before anyone developed: its exposure is that which gives its density at
  // usual development.
  curve.contrast_index = kUsualContrast;
  curve.maximum_density = usual_maximum;
  const double print = std::clamp(
      kPrintDensity * std::exp(random.normal(0.0, std::hypot(kPrintStockSd, kPrintBatchSd))), 0.3,
      0.75 * usual_maximum);
  stock.edge_print_log_h = FilmCurve(curve).log_h_of(print) - curve.speed_point_log_h;
  curve.contrast_index = faults.contrast_index;
  curve.maximum_density =
      std::clamp(usual_maximum * faults.contrast_index / kUsualContrast, 1.4, 4.0);
}

void not_developed(FilmStock& stock) {
  // Fixed clear: no silver anywhere. The curve's least contrast and print, far below sight.
  stock.fog = 0.0;
  stock.granularity = 0.0;
}

}  // namespace

FaultyRoll sample_faulty_roll(Random& random) {
  FaultyRoll roll;
  roll.roll = sample_roll(FilmFormat::k135, random);
  sample_development(roll.roll.stock, roll.faults, random);
  redraw_subjects(roll, random);
  roll.roll.stock.fog = random.log_uniform(0.02, 0.08);
  const double pick = random.uniform();
  if (pick < kFoggedShare) {
    roll.faults.fogged = true;
    roll.roll.stock.fog += random.log_uniform(0.15, 1.0);
  } else if (pick < kFoggedShare + kNotExposedShare) {
    roll.faults.exposed = false;
  } else if (pick < kFoggedShare + kNotExposedShare + kNotDevelopedShare) {
    roll.faults.developed = false;
    not_developed(roll.roll.stock);
  }
  return roll;
}

void redraw_subjects(FaultyRoll& roll, Random& random) {
  roll.faults.exposure_error_stops = random.normal(0.0, kExposureSdStops);
  roll.roll.exposure_error_stops = roll.faults.exposure_error_stops;
  roll.habit_stops = random.normal(0.0, kHabitSdStops);
  roll.roll.log_range_mean = random.normal(kLogRangeMean, kLogRangeRollSd);
}

FramePlan sample_faulty_frame(const FaultyRoll& roll, Random& random) {
  FramePlan frame = sample_frame(roll.roll, random);
  frame.scene.log_range =
      std::clamp(random.normal(roll.roll.log_range_mean, kLogRangeSdOfFrames), 1.0, 3.4);
  frame.scene.flare = random.log_uniform(kLeastFlare, kGreatestFlare);
  // The speed point moves with development: a push gains, a pull loses a little.
  constexpr double kGainPerLnContrast = 0.12;
  frame.mean_log_h +=
      kLog10OfStop * (kPlacementStops + roll.habit_stops + random.normal(0.0, kFrameSdStops)) +
      kGainPerLnContrast * std::log(roll.faults.contrast_index / kUsualContrast);
  return frame;
}

FaultyScan sample_faulty_scan(std::uint64_t seed) {
  Random random(seed, 4711);
  const FaultyRoll roll = sample_faulty_roll(random);
  FaultyScan scan;
  scan.faults = roll.faults;
  StripLayout layout;
  layout.frames = random.integer(4, 6);
  layout.leader = random.chance(0.3);
  layout.rotation_sd_deg = 0.3;
  StripPlan strip = lay_out_strip(roll.roll, layout, random);
  for (FramePlan& frame : strip.frames) {
    const FramePlan drawn = sample_faulty_frame(roll, random);
    frame.scene = drawn.scene;
    frame.mean_log_h = drawn.mean_log_h;
    frame.exposure_error_stops = drawn.exposure_error_stops;
    frame.blank = !roll.faults.exposed || !roll.faults.developed;
  }
  if (!roll.faults.developed) {
    strip.edge_print = false;
    strip.leader_mm = 0.0;
  }
  scan.scenario.seed = seed;
  scan.scenario.kind = "faulty-roll";
  scan.scenario.pixels_per_mm = 10.0;
  scan.scenario.strips = {strip};
  scan.scenario.scanner = sample_scanner(Device::kFlatbed, random);
  scan.scenario.encoding = sample_encoding(random);
  arrange_on_glass(scan.scenario, 0.0, 3.0);
  return scan;
}

}  // namespace filmsim
