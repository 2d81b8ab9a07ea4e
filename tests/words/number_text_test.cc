#include "words/number_text.h"

#include "record/invented_roll.h"

#include <clocale>
#include <cmath>
#include <limits>
#include <string>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using invented::density;

std::string shown(double value, double u95, DensityUnits units = DensityUnits::density) {
  return sentence_from_density(density(value, u95), units);
}

TEST(NumberText, IsNeverWiderThanItsDoubt) {
  EXPECT_EQ(shown(0.2837, 0.0210), "0.28 ± 0.02");
  EXPECT_EQ(shown(0.2837, 0.0240), "0.28 ± 0.02");
  EXPECT_EQ(shown(0.9812, 0.1234), "0.98 ± 0.12");
  EXPECT_EQ(shown(0.9812, 0.0123), "0.981 ± 0.012");
  EXPECT_EQ(shown(1.4449, 0.41), "1.4 ± 0.4");
  EXPECT_EQ(shown(2.6, 1.31), "2.6 ± 1.3");
  EXPECT_EQ(shown(26.4, 13.1), "26 ± 13");
}

TEST(NumberText, RoundsDoubtsAtTheEdgeOfADigit) {
  EXPECT_EQ(shown(0.5, 0.0196), "0.50 ± 0.02");
  EXPECT_EQ(shown(0.5, 0.0194), "0.500 ± 0.019");
  EXPECT_EQ(shown(0.5, 0.097), "0.50 ± 0.10");
}

TEST(NumberText, NeverPrintsADoubtAsNothing) {
  EXPECT_EQ(shown(0.5, 0.00002), "0.500 ± 0.001");
}

TEST(NumberText, PrintsTwoDecimalsWhereNoDoubtIsKnown) {
  EXPECT_EQ(shown(0.28371, 0.0), "0.28");
  EXPECT_EQ(shown(0.28371, std::nan("")), "0.28");
}

TEST(NumberText, PrintsBoundsAndSkewIntervalsAsSuch) {
  Quantity bound = density(2.417, 0.2);
  bound.at_least = true;
  EXPECT_EQ(sentence_from_density(bound, DensityUnits::density), "at least 2.4");
  Quantity skew = density(1.02, 0.2);
  skew.lower95 = 0.91;
  skew.upper95 = 1.38;
  EXPECT_EQ(sentence_from_density(skew, DensityUnits::density), "1.0 (0.9 to 1.4)");
}

TEST(NumberText, CountsAStopAsAFactorOfTwo) {
  EXPECT_EQ(shown(std::log10(2.0), 0.06, DensityUnits::stops), "1.0 ± 0.2 stops");
  EXPECT_EQ(shown(std::log10(8.0), 0.3 * std::log10(2.0), DensityUnits::stops), "3.0 ± 0.3 stops");
}

TEST(NumberText, WritesMinusAsMinusAndNothingAsNothing) {
  EXPECT_EQ(text_from_number(-0.127, 2), "−0.13");
  EXPECT_EQ(text_from_number(-0.001, 2), "0.00");
  EXPECT_EQ(machine_number(-0.127, 2), "-0.13");
  EXPECT_EQ(machine_number(-0.001, 2), "0.00");
}

TEST(NumberText, SurvivesWhatIsNoNumber) {
  EXPECT_EQ(text_from_number(std::nan(""), 2), "unknown");
  EXPECT_EQ(machine_number(std::numeric_limits<double>::infinity(), 1), "0.0");
  EXPECT_EQ(text_from_number(std::numeric_limits<double>::max(), 3).size(), 309U + 4U);
}

// Locales with a decimal comma are often not installed, so the process-wide C locale is set to
// whichever of them is; std::to_chars must not care.
TEST(NumberText, DoesNotDependOnTheLocale) {
  for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "C"}) {
    if (std::setlocale(LC_ALL, name) != nullptr) {
      break;
    }
  }
  const std::string text = shown(0.2837, 0.03);
  std::setlocale(LC_ALL, "C");
  EXPECT_EQ(text, "0.28 ± 0.03");
}

}  // namespace
}  // namespace fogline
