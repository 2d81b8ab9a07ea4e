#include "marks/side_by_side.h"

#include <atomic>
#include <chrono>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::Each;

TEST(SideBySide, EveryTaskRunsOnce) {
  for (const std::size_t count : {1U, 2U, 3U, 100U}) {
    std::vector<std::atomic<int>> runs(count);
    run_side_by_side(count, [&](std::size_t i) { ++runs[i]; });
    for (const std::atomic<int>& of_one : runs) {
      EXPECT_EQ(of_one, 1) << count;
    }
  }
}

TEST(SideBySide, WithoutTasksNothingRuns) {
  bool ran = false;
  run_side_by_side(0, [&](std::size_t) { ran = true; });
  EXPECT_FALSE(ran);
}

// Tasks write to plain memory of their own; the caller reads it without a lock.
TEST(SideBySide, ResultsAreThereAfterwards) {
  std::vector<std::size_t> squares(1000);
  run_side_by_side(squares.size(), [&](std::size_t i) { squares[i] = i * i; });
  for (std::size_t i = 0; i < squares.size(); ++i) {
    EXPECT_EQ(squares[i], i * i);
  }
}

/// Says how many are inside at a time.
class Room {
 public:
  void stay() {
    const int now = ++inside_;
    int most = most_;
    while (most < now && !most_.compare_exchange_weak(most, now)) {
    }
    std::this_thread::sleep_for(std::chrono::milliseconds(2));
    --inside_;
  }
  [[nodiscard]] int inside() const { return inside_; }
  [[nodiscard]] int most() const { return most_; }

 private:
  std::atomic<int> inside_ = 0;
  std::atomic<int> most_ = 0;
};

// Each task holds a tile of some 30 MB: more at a time cost memory, not time.
TEST(SideBySide, TwoAtATimeAtMost) {
  Room room;
  run_side_by_side(20, [&](std::size_t) { room.stay(); });
  EXPECT_LE(room.most(), 2);
  if (std::thread::hardware_concurrency() >= 2) {
    EXPECT_EQ(room.most(), 2);
  }
}

TEST(SideBySide, AFailureIsThrownOnceAllHaveEnded) {
  for (const std::size_t failing : {0U, 7U, 19U}) {
    Room room;
    try {
      run_side_by_side(20, [&](std::size_t i) {
        room.stay();
        if (i == failing) {
          throw std::runtime_error("task " + std::to_string(i));
        }
      });
      FAIL() << "nothing thrown by task " << failing;
    } catch (const std::runtime_error& error) {
      EXPECT_EQ(error.what(), "task " + std::to_string(failing));
      EXPECT_EQ(room.inside(), 0);
    }
  }
}

// One failure is thrown even where every task fails, and the next run is a new one.
TEST(SideBySide, ManyFailuresAreOne) {
  EXPECT_THROW(run_side_by_side(8, [](std::size_t) { throw std::logic_error("all"); }),
               std::logic_error);
  std::vector<int> ran(8, 0);
  run_side_by_side(ran.size(), [&](std::size_t i) { ran[i] = 1; });
  EXPECT_THAT(ran, Each(1));
}

}  // namespace
}  // namespace fogline
