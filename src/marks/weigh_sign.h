#pragma once

#include "marks/sign_weight.h"

#include <algorithm>
#include <cmath>

namespace fogline {

/// What a sign adds to the log odds.
inline double weighed(const SignWeight& sign, double value) {
  return sign.weight * (value - sign.even);
}

/// The same of a sign that says nothing up to `even`.
inline double weighed_beyond(const SignWeight& sign, double value) {
  return sign.weight * std::max(0.0, value - sign.even);
}

/// The same of a sign that counts by its logarithm. `value` is at least 0.
inline double log_weighed(const SignWeight& sign, double value) {
  return sign.weight * std::log(std::max(value, 1e-6) / sign.even);
}

}  // namespace fogline
