#include <fogline/base/scan_source.h>

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

TEST(CodeCurve, APowerIsExactBetweenAndBeyondItsPoints) {
  CodeCurve curve;
  for (const double code : {0.01, 0.1, 0.5, 1.0}) {
    curve.code.push_back(code);
    curve.light.push_back(std::pow(code, 2.2));
  }
  for (const double code : {0.001, 0.01, 0.03, 0.7, 1.0, 1.1}) {
    EXPECT_NEAR(curve.light_of(code) / std::pow(code, 2.2), 1.0, 1e-12);
    EXPECT_NEAR(curve.code_of(curve.light_of(code)), code, 1e-12);
  }
  EXPECT_EQ(curve.light_of(0.0), 0.0);
  EXPECT_EQ(curve.code_of(-1.0), 0.0);
}

}  // namespace
}  // namespace fogline
