#include "words/number_forms.h"

#include <cmath>
#include <stdexcept>
#include <string>

#include <gtest/gtest.h>

namespace fogline {
namespace {

TEST(NumberForms, RoundSecondsBeforeTheyAreSplitIntoMinutes) {
  EXPECT_EQ(number_in_form(59.4, "clock"), "0:59");
  EXPECT_EQ(number_in_form(59.6, "clock"), "1:00");
  EXPECT_EQ(number_in_form(119.5, "clock"), "2:00");
  EXPECT_EQ(number_in_form(65.0, "clock"), "1:05");
  EXPECT_EQ(number_in_form(0.0, "clock"), "0:00");
  EXPECT_EQ(number_in_form(3600.0, "clock"), "60:00");
}

TEST(NumberForms, RoundShares) {
  EXPECT_EQ(number_in_form(0.994, "percent"), "99 %");
  EXPECT_EQ(number_in_form(0.996, "percent"), "100 %");
  EXPECT_EQ(number_in_form(-0.0, "percent"), "0 %");
  EXPECT_EQ(number_in_form(-0.25, "percent"), "−25 %");
}

TEST(NumberForms, TellStopsInThirdsWithoutSign) {
  EXPECT_EQ(number_in_form(0.33, "stops"), "1/3 of a stop");
  EXPECT_EQ(number_in_form(0.95, "stops"), "1 stop");
  EXPECT_EQ(number_in_form(-1.0, "stops"), "1 stop");
  EXPECT_EQ(number_in_form(-1.67, "stops"), "1 2/3 stops");
  EXPECT_EQ(number_in_form(2.0, "stops"), "2 stops");
  EXPECT_EQ(number_in_form(0.1, "stops"), "0 stops");
}

TEST(NumberForms, CountInWordsAsLongAsWordsAreShort) {
  EXPECT_EQ(number_in_form(0.0, "count"), "no");
  EXPECT_EQ(number_in_form(-3.0, "count"), "no");
  EXPECT_EQ(number_in_form(3.0, "count"), "three");
  EXPECT_EQ(number_in_form(12.0, "count"), "twelve");
  EXPECT_EQ(number_in_form(13.0, "count"), "13");
}

TEST(NumberForms, OneFrameHasNoMedian) {
  EXPECT_EQ(number_in_form(1.0, "median"), "the one frame");
  EXPECT_EQ(number_in_form(2.0, "median"), "the median of 2 frames");
}

TEST(NumberForms, NothingHasNoSign) {
  EXPECT_EQ(number_in_form(0.0, "+2"), "0.00");
  EXPECT_EQ(number_in_form(-0.001, "+2"), "0.00");
  EXPECT_EQ(number_in_form(0.001, "+2"), "0.00");
  EXPECT_EQ(number_in_form(-0.0, "signed"), "+0");
  EXPECT_EQ(number_in_form(0.005, "+2").front(), '+');
  EXPECT_EQ(number_in_form(-0.25, "+1"), "−0.2");
}

TEST(NumberForms, CallUnknownWhatIsNoNumber) {
  for (const char* form : {"clock", "percent", "stops", "count", "signed", "median", "2", "+1"}) {
    EXPECT_EQ(number_in_form(std::nan(""), form), "unknown") << form;
    for (const double endless : {INFINITY, -INFINITY}) {
      const std::string text = number_in_form(endless, form);
      EXPECT_FALSE(text.empty()) << form;
      EXPECT_EQ(text.find("inf"), std::string::npos) << form << ": " << text;
    }
  }
}

TEST(NumberForms, RefuseAFormThatNobodyKnows) {
  for (const char* form : {"", "5", "+", "+5", "-1", "12", "Clock", "stops "}) {
    EXPECT_THROW(number_in_form(1.0, form), std::logic_error) << form;
  }
}

}  // namespace
}  // namespace fogline
