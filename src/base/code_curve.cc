#include <fogline/base/scan_source.h>

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Straight in the logarithm of both, through the two points about (or nearest to) `from`.
double log_log_line(const std::vector<double>& x, const std::vector<double>& y, double from) {
  const auto above =
      static_cast<std::size_t>(std::upper_bound(x.begin(), x.end(), from) - x.begin());
  const std::size_t end = std::clamp<std::size_t>(above, 1, x.size() - 1);
  const double share = std::log(from / x[end - 1]) / std::log(x[end] / x[end - 1]);
  return y[end - 1] * std::pow(y[end] / y[end - 1], share);
}

}  // namespace

double CodeCurve::light_of(double code_share) const {
  return code_share > 0.0 ? log_log_line(code, light, code_share) : 0.0;
}

double CodeCurve::code_of(double linear_light) const {
  return linear_light > 0.0 ? log_log_line(light, code, linear_light) : 0.0;
}

}  // namespace fogline
