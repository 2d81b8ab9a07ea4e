#include <fogline/sensitometry/sensitometry.h>

#include <utility>

namespace fogline {

Sensitometry read_sensitometry(CharacteristicCurve curve, const ExposureScale& scale) {
  Sensitometry result;
  result.scale = scale;
  result.curve = std::move(curve);
  result.readings = read_curve(result.curve);
  result.iso = read_iso_speed(result.curve, result.readings, scale.absolute);
  result.placement = place_zones(result.curve, scale.metered_log_h, scale.exposure_index);
  result.useful_range_log_h = useful_range(result.curve);
  return result;
}

}  // namespace fogline
