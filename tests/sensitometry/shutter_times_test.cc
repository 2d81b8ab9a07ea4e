#include "sensitometry/shutter_times.h"

#include <array>
#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

// Marked and exact exposure times are powers of two (ISO 516; from memory).
TEST(ShutterTimes, MarksStandForPowersOfTwo) {
  constexpr std::array<std::array<double, 2>, 15> marks{{{1, 1},
                                                         {2, 2},
                                                         {4, 4},
                                                         {8, 8},
                                                         {15, 16},
                                                         {30, 32},
                                                         {60, 64},
                                                         {125, 128},
                                                         {250, 256},
                                                         {500, 512},
                                                         {1000, 1024},
                                                         {2000, 2048},
                                                         {4000, 4096},
                                                         {8000, 8192},
                                                         {16, 16}}};
  for (const auto& [mark, exact] : marks) {
    EXPECT_NEAR(true_time_s(1.0 / mark), 1.0 / exact, 1e-9) << "1/" << mark;
    EXPECT_NEAR(true_time_s(mark), exact, 1e-9) << mark;
  }
}

TEST(ShutterTimes, ThirdsAndHalvesAreTakenToo) {
  EXPECT_NEAR(std::log2(true_time_s(1.0 / 50.0)), -17.0 / 3.0, 1e-9);
  EXPECT_NEAR(std::log2(true_time_s(1.0 / 40.0)), -16.0 / 3.0, 1e-9);
  EXPECT_NEAR(std::log2(true_time_s(1.0 / 45.0)), -5.5, 1e-9);
}

}  // namespace
}  // namespace fogline
