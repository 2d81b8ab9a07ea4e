#include "density/callier.h"

#include <cmath>
#include <cstddef>

namespace fogline {

namespace {

constexpr double knee_density = 0.3;
/// The table's densities: so close that straight lines between them miss by less than 3e-5.
constexpr double table_step = 0.005;
constexpr double table_end = 6.0;

}  // namespace

double callier_risen(double net_density) {
  return 1.0 - std::exp(-std::abs(net_density) / knee_density);
}

double directed_density(double diffuse, double callier) {
  return diffuse * (1.0 + (callier - 1.0) * callier_risen(diffuse));
}

double directed_slope(double diffuse, double callier) {
  const double depth = std::abs(diffuse) / knee_density;
  return 1.0 + (callier - 1.0) * (callier_risen(diffuse) + depth * std::exp(-depth));
}

double diffuse_density(double directed, double callier) {
  if (callier == 1.0 || !std::isfinite(directed)) {
    return directed;
  }
  // Newton's steps from the far side of the knee: the curve is smooth and its slope lies between 1
  // and 1.14 Q, so each gains digits.
  constexpr double close = 1e-10;
  constexpr int most_steps = 30;
  double diffuse = directed / callier;
  for (int i = 0; i < most_steps; ++i) {
    const double step =
        (directed - directed_density(diffuse, callier)) / directed_slope(diffuse, callier);
    diffuse += step;
    if (std::abs(step) < close) {
      break;
    }
  }
  return diffuse;
}

DiffuseScale::DiffuseScale(double callier) : callier_(callier) {
  for (int i = 0; i * table_step <= table_end; ++i) {
    diffuse_.push_back(diffuse_density(i * table_step, callier));
  }
}

double DiffuseScale::of_directed(double directed) const {
  const double place = std::abs(directed) / table_step;
  if (!(place < static_cast<double>(diffuse_.size() - 1))) {
    return diffuse_density(directed, callier_);
  }
  const auto i = static_cast<std::size_t>(place);
  const double share = place - static_cast<double>(i);
  return std::copysign(diffuse_[i] + share * (diffuse_[i + 1] - diffuse_[i]), directed);
}

}  // namespace fogline
