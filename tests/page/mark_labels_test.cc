#include "page/mark_labels.h"

#include "record/invented_judgement.h"

#include <cmath>
#include <random>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr BoxPx window{0.0, 0.0, 1300.0, 350.0};
constexpr double room = 0.05;

std::vector<NumberedMark> numbered(const std::vector<Mark>& marks) {
  std::vector<NumberedMark> list;
  for (const Mark& mark : marks) {
    list.push_back({static_cast<int>(list.size()) + 1, &mark});
  }
  return list;
}

std::vector<Mark> scattered(int count) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> share(0.0, 1.0);
  std::vector<Mark> marks;
  for (int i = 0; i < count; ++i) {
    marks.push_back(invented::mark(MarkKind::dust,
                                   {1280.0 * share(random), 330.0 * share(random), 4.0, 5.0}, 0.5,
                                   0.3, share(random)));
  }
  return marks;
}

bool enters(const LinePiece& piece, const BoxPx& box) {
  constexpr int steps = 200;
  for (int i = 0; i <= steps; ++i) {
    const double t = static_cast<double>(i) / steps;
    const double x = piece.from.x + t * (piece.to.x - piece.from.x) - box.x;
    const double y = piece.from.y + t * (piece.to.y - piece.from.y) - box.y;
    constexpr double touch = 1e-6;
    if (x > touch && x < box.width - touch && y > touch && y < box.height - touch) {
      return true;
    }
  }
  return false;
}

TEST(MarkLabels, LinesEnterNoOutline) {
  const std::vector<Mark> marks = scattered(18);
  const auto labels = place_labels(numbered(marks), 1.0, window, room);
  ASSERT_EQ(labels.size(), marks.size());
  for (const MarkLabel& label : labels) {
    for (const LinePiece& piece : label.line) {
      for (const Mark& mark : marks) {
        EXPECT_FALSE(enters(piece, mark_outline(mark, 1.0))) << label.number;
      }
    }
  }
}

TEST(MarkLabels, NumbersStandOutsideAndApart) {
  const std::vector<Mark> marks = scattered(40);
  const auto labels = place_labels(numbered(marks), 1.0, window, room);
  ASSERT_GT(labels.size(), 20U);
  for (const MarkLabel& label : labels) {
    EXPECT_TRUE(label.place.y < 0.0 || label.place.y > window.height);
    EXPECT_EQ(label.place.y < 0.0, label.side == LabelSide::top);
    EXPECT_GE(label.place.x, 0.0);
    EXPECT_LE(label.place.x, window.width);
    for (const MarkLabel& other : labels) {
      if (other.number != label.number && other.side == label.side) {
        EXPECT_GE(std::abs(other.place.x - label.place.x), room * window.width - 1e-6);
      }
    }
  }
}

TEST(MarkLabels, LeaveTheLeastSureWithoutANumber) {
  const std::vector<Mark> marks = scattered(120);
  const auto labels = place_labels(numbered(marks), 1.0, window, room);
  EXPECT_LE(labels.size(), 40U);
  double surest = 0.0;
  int number = 0;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    if (marks[i].confidence > surest) {
      surest = marks[i].confidence;
      number = static_cast<int>(i) + 1;
    }
  }
  EXPECT_TRUE(std::any_of(labels.begin(), labels.end(),
                          [&](const MarkLabel& label) { return label.number == number; }));
}

TEST(MarkLabels, StandingStripsHaveThemAtTheSides) {
  const std::vector<Mark> marks{
      invented::mark(MarkKind::air_bell, {20.0, 500.0, 10.0, 10.0}, 1.0, -0.3, 0.9),
      invented::mark(MarkKind::air_bell, {310.0, 500.0, 10.0, 10.0}, 1.0, -0.3, 0.9)};
  const auto labels = place_labels(numbered(marks), 1.0, {0.0, 0.0, 350.0, 1300.0}, room);
  ASSERT_EQ(labels.size(), 2U);
  EXPECT_EQ(labels[0].side, LabelSide::left);
  EXPECT_LT(labels[0].place.x, 0.0);
  EXPECT_EQ(labels[1].side, LabelSide::right);
  EXPECT_GT(labels[1].place.x, 350.0);
}

TEST(MarkLabels, LeaveOutMarksBeyondTheWindow) {
  const std::vector<Mark> marks = invented::marks();
  const auto labels = place_labels(numbered(marks), 1.0, {0.0, 0.0, 300.0, 350.0}, room);
  ASSERT_EQ(labels.size(), 2U);  // the ring, and the scratch that runs through it
}

}  // namespace
}  // namespace fogline
