// Which of the marks found are the ones that were drawn.
#pragma once

#include "marks/drawn_marks.h"

#include <fogline/marks/mark.h>

#include <algorithm>
#include <iterator>
#include <vector>

namespace fogline {

/// The marks that a report tells.
inline std::vector<Mark> told(const MarkSearch& search) {
  std::vector<Mark> told;
  std::copy_if(
      search.marks.begin(), search.marks.end(), std::back_inserter(told),
      [](const Mark& mark) { return mark.confidence >= shipped_knowledge().scan.marks.told_from; });
  return told;
}

/// The mark at a place, where there is one; else a mark of unknown kind.
inline Mark mark_at(const std::vector<Mark>& marks, PointMm at, double reach_mm) {
  const auto found = std::find_if(marks.begin(), marks.end(), [&](const Mark& mark) {
    return distance_mm(mark.middle, at) < reach_mm;
  });
  return found == marks.end() ? Mark{} : *found;
}

}  // namespace fogline
