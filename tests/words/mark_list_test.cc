#include "words/mark_list.h"

#include "record/invented_judgement.h"

#include <algorithm>

#include <gtest/gtest.h>

namespace fogline {
namespace {

Mark mark_at(double x, double y, MarkKind kind = MarkKind::air_bell, double sure = 0.9) {
  return invented::mark(kind, {x, y, 4.0, 4.0}, 0.4, 0.1, sure);
}

RollMeasurement with_marks(std::vector<Mark> marks) {
  RollMeasurement roll = invented::roll();
  roll.scans.front().marks = std::move(marks);
  return roll;
}

TEST(MarkList, NumbersMarksAsTheyLieAlongTheFilm) {
  RollMeasurement roll = with_marks({mark_at(500.0, 10.0), mark_at(100.0, 90.0)});
  auto list = mark_lists(roll).front();
  ASSERT_EQ(list.numbered.size(), 2U);
  EXPECT_EQ(list.numbered[0].number, 1);
  EXPECT_EQ(list.numbered[0].mark->box_px.x, 100.0);
  std::swap(roll.scans.front().info.width_px, roll.scans.front().info.height_px);
  list = mark_lists(roll).front();
  EXPECT_EQ(list.numbered[0].mark->box_px.x, 500.0);
}

TEST(MarkList, TellsOneStripAfterTheOther) {
  RollMeasurement roll = with_marks({mark_at(100.0, 10.0), mark_at(500.0, 10.0)});
  roll.scans.front().marks[0].strip = 2;
  EXPECT_EQ(mark_lists(roll).front().numbered[0].mark->strip, 1);
}

TEST(MarkList, CountsOnThroughAllScans) {
  RollMeasurement roll = with_marks({mark_at(1.0, 1.0), mark_at(9.0, 1.0)});
  roll.scans.push_back(invented::scan("clean.tif"));
  roll.scans.push_back(roll.scans.front());
  const auto lists = mark_lists(roll);
  ASSERT_EQ(lists.size(), 3U);
  EXPECT_TRUE(lists[1].numbered.empty());
  EXPECT_EQ(lists[2].numbered.front().number, 3);
}

TEST(MarkList, LeavesDirtWithoutANumberBeforeWhatHappenedInTheBaths) {
  std::vector<Mark> marks;
  for (int i = 0; i < 24; ++i) {
    marks.push_back(mark_at(10.0 * i, 1.0, MarkKind::dust, 0.99));
  }
  EXPECT_TRUE(mark_lists(with_marks(marks)).front().others.empty());
  marks.push_back(mark_at(999.0, 1.0, MarkKind::drying_mark, 0.6));
  const RollMeasurement roll = with_marks(marks);
  const MarkList list = mark_lists(roll).front();
  EXPECT_EQ(list.numbered.size(), 24U);
  EXPECT_EQ(list.numbered.back().mark->kind, MarkKind::drying_mark);
  ASSERT_EQ(list.others.size(), 1U);
  EXPECT_EQ(list.others.front()->kind, MarkKind::dust);
}

}  // namespace
}  // namespace fogline
