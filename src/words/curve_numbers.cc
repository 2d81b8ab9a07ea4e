#include "words/curve_numbers.h"

namespace fogline {

std::vector<CurveNumber> curve_numbers(const Sensitometry& read) {
  const CurveReadings& r = read.readings;
  return {{"contrast index", &r.contrast_index},
          {"average gradient over 1.30", &r.gradient_130},
          {"average gradient over 1.50", &r.gradient_150},
          {"average gradient over 1.80", &r.gradient_180},
          {"average gradient over 2.11 (Zone I to VIII)", &r.gradient_zones},
          {"gamma (straight line)", &r.gamma},
          {"length of the straight line, log H", &r.straight_length},
          {"toe: speed point to straight line, log H", &r.toe_length},
          {"toe: slope at the speed point, part of gamma", &r.toe_slope_part},
          {"net density where the shoulder begins", &r.shoulder_density},
          {"speed point (0.10 net), log H", &r.speed_point_log_h},
          {"speed by fractional gradient, log H", &r.fractional_gradient_log_h},
          {"the same by Delta-X, log H", &r.delta_x_log_h},
          {"net density gained over 1.30 (ISO 6 triangle: 0.80)", &r.triangle_gain},
          {"useful exposure range, log H", &read.useful_range_log_h},
          {"net density from Zone I to Zone VIII", &read.placement.density_range},
          {"exposure index, Zone I at the speed point", &read.placement.exposure_index, 0},
          {"exposure index by the meter's constant", &read.placement.exposure_index_by_meter, 0},
          {"ISO speed", &read.iso.speed, 0},
          {"effective speed by Delta-X", &read.iso.effective_speed, 0}};
}

}  // namespace fogline
