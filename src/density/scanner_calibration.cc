#include <fogline/density/scanner_calibration.h>

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// No two scans have the same stray light to better than this part of an evenly lit field.
constexpr double least_other_field = 0.05;

}  // namespace

CalibratedDoubt ScannerCalibration::doubt_at(double density) const {
  if (doubt.empty()) {
    return {density, 0.0, 0.0, 1.0};
  }
  const auto above = std::find_if(doubt.begin(), doubt.end(),
                                  [&](const CalibratedDoubt& d) { return d.density >= density; });
  if (above == doubt.begin() || doubt.size() == 1) {
    return {density, doubt.front().fit, doubt.front().stray, doubt.front().field};
  }
  // Beyond the last the doubt grows as it grew towards it.
  const auto upper = above == doubt.end() ? doubt.end() - 1 : above;
  const CalibratedDoubt& low = *(upper - 1);
  const CalibratedDoubt& high = *upper;
  const double share = (density - low.density) / (high.density - low.density);
  const double within = std::min(1.0, share);
  return {density, std::max(low.fit, low.fit + share * (high.fit - low.fit)),
          std::max(low.stray, low.stray + share * (high.stray - low.stray)),
          low.field + within * (high.field - low.field)};
}

double ScannerCalibration::stray_doubt_in(double field, double density) const {
  return stray.share_doubt * std::max(least_other_field, std::abs(field - doubt_at(density).field));
}

}  // namespace fogline
