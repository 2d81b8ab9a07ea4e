#pragma once

#include <fogline/base/known.h>
#include <fogline/sensitometry/read_curve.h>

namespace fogline {

/// A number read from a curve, with what the curve says where it can't be read.
inline Known<Quantity> known_reading(const CurveReading& reading) {
  return reading.quantity ? Known<Quantity>(*reading.quantity)
                          : Known<Quantity>(WhyUnknown{Unknown::not_told, {}, {}, reading.reason});
}

}  // namespace fogline
