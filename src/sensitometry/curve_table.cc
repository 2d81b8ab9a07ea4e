#include <fogline/sensitometry/characteristic_curve.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace fogline {

double CurveTable::end_log_h() const {
  return begin_log_h + step_log_h * static_cast<double>(net_density.size() - 1);
}

double CurveTable::density_at(double log_h) const {
  const double place = (log_h - begin_log_h) / step_log_h;
  if (place <= 0.0) {
    return net_density.front();
  }
  const auto below = static_cast<std::size_t>(place);
  if (below + 1 >= net_density.size()) {
    return net_density.back();
  }
  const double share = place - static_cast<double>(below);
  return net_density[below] + share * (net_density[below + 1] - net_density[below]);
}

double CurveTable::log_h_at(double density) const {
  const auto above = std::lower_bound(net_density.begin(), net_density.end(), density);
  if (above == net_density.end()) {
    return std::numeric_limits<double>::infinity();
  }
  if (above == net_density.begin()) {
    return -std::numeric_limits<double>::infinity();
  }
  const auto i = static_cast<double>(above - net_density.begin());
  return begin_log_h + step_log_h * (i - (*above - density) / (*above - *(above - 1)));
}

double CurveTable::slope_at(double log_h, double width) const {
  return (density_at(log_h + 0.5 * width) - density_at(log_h - 0.5 * width)) / width;
}

}  // namespace fogline
