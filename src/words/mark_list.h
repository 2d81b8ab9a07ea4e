#pragma once

#include <fogline/roll/roll_measurement.h>

#include <cstddef>
#include <vector>

namespace fogline {

/// A mark by its number in the report, counted from 1 through all scans of the roll.
struct NumberedMark {
  int number = 0;
  const Mark* mark = nullptr;
};

/// Marks of one scan as a report tells them.
struct MarkList {
  /// The most sure ones, in the order in which they lie along the film.
  std::vector<NumberedMark> numbered;
  /// The rest, where there are too many to be told one by one.
  std::vector<const Mark*> others;
};

/// One list a scan.
std::vector<MarkList> mark_lists(const RollMeasurement& measurement);

}  // namespace fogline
