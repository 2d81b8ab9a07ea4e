#include "simulator/roll_sampling.h"

#include <algorithm>
#include <cmath>

namespace filmsim {
namespace {

double clamped_normal(Random& random, double mean, double sd, double low, double high) {
  return std::clamp(random.normal(mean, sd), low, high);
}

double base_density(FilmFormat format, Random& random) {
  const bool clear_base = format != FilmFormat::k135 || random.chance(0.12);
  return clear_base ? random.uniform(0.05, 0.15) : random.uniform(0.18, 0.32);
}

CurveSettings sample_curve(Random& random) {
  CurveSettings curve;
  curve.family = static_cast<CurveFamily>(random.integer(0, 3));
  curve.contrast_index = clamped_normal(random, 0.58, 0.10, 0.35, 0.90);
  // Less development leaves less silver at the top too.
  curve.maximum_density =
      std::clamp(random.uniform(2.2, 3.4) * curve.contrast_index / 0.58, 1.6, 3.8);
  curve.toe = random.uniform(0.08, 0.22);
  curve.shoulder = random.uniform(2.5, 6.0);
  curve.speed_point_log_h = random.uniform(-2.7, -1.6);
  return curve;
}

}  // namespace

void add_random_tint(FilmStock& stock, Random& random) {
  const double amount = random.log_uniform(0.02, 0.15);
  switch (random.integer(0, 4)) {
    case 0:
      stock.dye_left = {0.15 * amount, amount, random.uniform(0.0, 0.35) * amount};
      break;
    case 1:
      stock.dye_left = {amount, random.uniform(0.2, 0.6) * amount, 0.1 * amount};
      break;
    case 2:
      stock.yellow_stain = {0.0, 0.25 * amount, amount};
      break;
    case 3:
      stock.haze = {0.55 * amount, 0.7 * amount, amount};
      break;
    default:
      stock.image_stain = {0.0, 1.2 * amount, random.uniform(0.1, 0.5)};
      break;
  }
}

FilmStock sample_stock(FilmFormat format, Random& random) {
  constexpr double kTinted = 0.2;
  FilmStock stock;
  const double base = base_density(format, random);
  for (double& channel : stock.base) {
    channel = base + clamped_normal(random, 0.0, 0.007, -0.02, 0.02);
  }
  stock.fog = random.chance(0.92) ? random.log_uniform(0.02, 0.10) : random.uniform(0.1, 0.3);
  stock.curve = sample_curve(random);
  stock.granularity = random.uniform(3.5e-4, 9e-4);
  stock.grain_um = random.uniform(4.0, 10.0);
  stock.edge_print_log_h = random.uniform(1.2, 2.1);
  if (random.chance(kTinted)) add_random_tint(stock, random);
  return stock;
}

Roll sample_roll(FilmFormat format, Random& random) {
  Roll roll;
  roll.stock = sample_stock(format, random);
  roll.log_range_mean = random.normal(kLogRangeMean, kLogRangeRollSd);
  roll.exposure_error_stops = random.normal(0.0, 0.6);
  roll.gate_length_mm = 36.0 + random.uniform(-0.4, 0.4);
  roll.gate_width_mm = 24.0 + random.uniform(-0.3, 0.3);
  roll.gate_offset_mm = random.uniform(-0.3, 0.3);
  roll.gap_mean_mm = 38.0 + random.normal(0.0, 0.15) - roll.gate_length_mm;
  roll.gap_sd_mm = random.uniform(0.02, 0.35);
  roll.upside_down = random.chance(0.5);
  return roll;
}

FramePlan sample_frame(const Roll& roll, Random& random) {
  constexpr double kMeterPlacesMean = 1.2;  // log H above the speed point
  constexpr double kNightPlacesMean = 0.7;
  constexpr double kLog10OfStop = 0.30103;
  FramePlan frame;
  frame.length_mm = roll.gate_length_mm;
  frame.width_mm = roll.gate_width_mm;
  frame.middle_v_mm = roll.gate_offset_mm;
  frame.scene.kind = random.chance(0.6)
                         ? static_cast<SceneKind>(random.integer(0, 2))
                         : static_cast<SceneKind>(random.integer(0, kSceneKinds - 1));
  frame.scene.seed = random.next();
  frame.scene.log_range =
      std::clamp(random.normal(roll.log_range_mean, kLogRangeFrameSd), 1.2, 3.2);
  frame.scene.flare = random.log_uniform(0.005, 0.05);
  frame.scene.falloff = random.uniform(0.0, 0.2);
  frame.scene.turned = random.chance(0.25);
  frame.scene.upside_down = roll.upside_down;
  frame.scene.black_border = random.chance(0.08);
  frame.exposure_error_stops = roll.exposure_error_stops + random.normal(0.0, 0.35);
  const bool night = frame.scene.kind == SceneKind::kNight;
  frame.mean_log_h =
      (night ? kNightPlacesMean : kMeterPlacesMean) + kLog10OfStop * frame.exposure_error_stops;
  return frame;
}

}  // namespace filmsim
