#include "words/fact_words.h"

#include <stdexcept>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr std::array<std::string_view, 2> numbers{"time_s", "share"};
constexpr std::array<std::string_view, 1> names{"file"};

std::string say(std::string_view text) {
  return filled(text, numbers, {570.0, 0.254}, names, {"a.tif"});
}

TEST(FactWords, FillNumbersInTheFormAskedFor) {
  EXPECT_EQ(say("{file}: {time_s:clock}, {share:percent}, {share:2}."), "a.tif: 9:30, 25 %, 0.25.");
  EXPECT_EQ(say("{share:+1}"), "+0.3");
  EXPECT_EQ(say("{share:signed}"), "+0.25");
  EXPECT_EQ(filled("{n:count} {n:stops}", std::array<std::string_view, 1>{"n"}, {1.0}, {}, {}),
            "one 1 stop");
  EXPECT_EQ(filled("{n:stops}", std::array<std::string_view, 1>{"n"}, {-0.667}, {}, {}),
            "2/3 of a stop");
}

TEST(FactWords, RefuseWhatNothingFills) {
  EXPECT_THROW(say("{clearing_s:clock}"), std::logic_error);
  EXPECT_THROW(say("{time_s:fathoms}"), std::logic_error);
  EXPECT_THROW(filled("{time_s:1}", numbers, {}, names, {}), std::logic_error);
}

}  // namespace
}  // namespace fogline
