#include "sensitometry/zones.h"

#include <fogline/sensitometry/sensitometry.h>

namespace fogline {

Sensitometry read_sensitometry(const FittedCurve& curve, const ExposureScale& scale) {
  Sensitometry result;
  result.scale = scale;
  result.curve = static_cast<const CharacteristicCurve&>(curve);
  result.readings = read_curve(curve);
  result.iso = read_iso_speed(curve, result.readings, scale.absolute);
  result.placement = place_zones(curve, scale.metered_log_h, scale.exposure_index);
  result.useful_range_log_h = useful_range(curve);
  return result;
}

}  // namespace fogline
