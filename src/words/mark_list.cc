#include "words/mark_list.h"

#include <algorithm>

namespace fogline {
namespace {

/// More numbers than these can't be told apart on one strip's picture.
constexpr std::size_t most_numbered = 24;

/// Which marks get numbers first: the sure ones, and dirt, which may lie on the scanner's glass and
/// is told by its count, after what happened in the baths.
double weight(const Mark& mark) {
  const bool dirt = mark.kind == MarkKind::dust || mark.kind == MarkKind::fibre;
  return mark.confidence + (dirt ? 0.0 : 0.5);
}

bool lies_before(const Mark* a, const Mark* b, bool downwards) {
  if (a->strip != b->strip) {
    return a->strip < b->strip;
  }
  const auto middle = [downwards](const Mark& mark) {
    return downwards ? mark.box_px.y + mark.box_px.height / 2.0
                     : mark.box_px.x + mark.box_px.width / 2.0;
  };
  return middle(*a) < middle(*b);
}

}  // namespace

std::vector<MarkList> mark_lists(const RollMeasurement& measurement) {
  std::vector<MarkList> lists;
  int number = 0;
  for (const ScanMeasurement& scan : measurement.scans) {
    std::vector<const Mark*> marks;
    for (const Mark& mark : scan.marks) {
      marks.push_back(&mark);
    }
    std::stable_sort(marks.begin(), marks.end(),
                     [](const Mark* a, const Mark* b) { return weight(*a) > weight(*b); });
    MarkList list;
    if (marks.size() > most_numbered) {
      list.others.assign(marks.begin() + most_numbered, marks.end());
      marks.resize(most_numbered);
    }
    const bool downwards = scan.info.height_px > scan.info.width_px;
    std::stable_sort(marks.begin(), marks.end(), [downwards](const Mark* a, const Mark* b) {
      return lies_before(a, b, downwards);
    });
    for (const Mark* mark : marks) {
      list.numbered.push_back({++number, mark});
    }
    lists.push_back(std::move(list));
  }
  return lists;
}

}  // namespace fogline
