// A value whose doubt holds its error is only worth something while the doubt is small: both are
// asked.
#pragma once

#include <fogline/base/quantity.h>

#include <gtest/gtest.h>

namespace fogline::test {

/// Expects a value within its own u95 of the truth, and that u95 below `greatest_u95`.
inline void expect_within_doubt(const Quantity& read, double truth, double greatest_u95) {
  EXPECT_NEAR(read.value, truth, read.u95);
  EXPECT_LT(read.u95, greatest_u95);
}

}  // namespace fogline::test
