#include <fogline/density/scanner_calibration.h>

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// No two scans have the same stray light to better than this part of an evenly lit field.
constexpr double least_other_field = 0.10;

}  // namespace

CalibratedDoubt ScannerCalibration::doubt_at(double density) const {
  if (doubt.empty()) {
    return {density, 0.0, 0.0, even_field(1.0)};
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
  StrayField field{};
  for (std::size_t k = 0; k < field.size(); ++k) {
    field[k] = low.field[k] + within * (high.field[k] - low.field[k]);
  }
  return {density, std::max(low.fit, low.fit + share * (high.fit - low.fit)),
          std::max(low.stray, low.stray + share * (high.stray - low.stray)), field};
}

double ScannerCalibration::stray_doubt_in(const StrayField& field, double density) const {
  const StrayField of_wedge = doubt_at(density).field;
  StrayField other{};
  for (std::size_t k = 0; k < field.size(); ++k) {
    other[k] = field[k] - of_wedge[k];
  }
  const double mean = mean_of(other);
  double squares = 0.0;
  for (const double one : other) {
    squares += (one - mean) * (one - mean);
  }
  // Weights of three widths that add up to 1 and of which any may outweigh the others (Dirichlet's
  // distribution with concentration 1/3 each) spread a weighted mean by the values' standard
  // deviation over the root of 2.
  const double reach = std::sqrt(0.5 * squares / static_cast<double>(other.size()));
  return std::hypot(stray.share_doubt * std::max(least_other_field, std::abs(mean)),
                    stray.share * reach);
}

}  // namespace fogline
