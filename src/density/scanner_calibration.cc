#include <fogline/density/scanner_calibration.h>

#include <algorithm>

namespace fogline {

CalibratedDoubt ScannerCalibration::doubt_at(double density) const {
  if (doubt.empty()) {
    return {density, 0.0, 0.0};
  }
  const auto above = std::find_if(doubt.begin(), doubt.end(),
                                  [&](const CalibratedDoubt& d) { return d.density >= density; });
  if (above == doubt.begin() || doubt.size() == 1) {
    return {density, doubt.front().fit, doubt.front().stray};
  }
  // Beyond the last the doubt grows as it grew towards it.
  const auto upper = above == doubt.end() ? doubt.end() - 1 : above;
  const CalibratedDoubt& low = *(upper - 1);
  const CalibratedDoubt& high = *upper;
  const double share = (density - low.density) / (high.density - low.density);
  return {density, std::max(low.fit, low.fit + share * (high.fit - low.fit)),
          std::max(low.stray, low.stray + share * (high.stray - low.stray))};
}

}  // namespace fogline
