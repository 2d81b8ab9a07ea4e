#pragma once

#include <fogline/sensitometry/sensitometry.h>

#include <string>
#include <vector>

namespace fogline {

/// A number read from the curve as a reader sees it.
struct CurveNumber {
  std::string name;
  const CurveReading* reading = nullptr;
  int decimals = 2;
};

/// All numbers of a curve, most wanted first. They point into `read`.
std::vector<CurveNumber> curve_numbers(const Sensitometry& read);

}  // namespace fogline
