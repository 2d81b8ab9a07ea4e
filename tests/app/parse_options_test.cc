#include "app/command_line/parse_options.h"

#include "app/command_line/usage_error.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

const std::vector<OptionSpec> options{
    {.name = "card", .takes = Takes::file, .argument = "FILE"},
    {.name = "area", .takes = Takes::text, .argument = "BOX", .repeats = true},
    {.name = "budget"},
};

std::string refusal(const std::vector<std::string>& arguments) {
  try {
    parse_options(options, arguments);
    return "";
  } catch (const UsageError& error) {
    return error.what();
  }
}

TEST(ParseOptions, PartsOptionsFromOperandsInAnyOrder) {
  const GivenOptions given =
      parse_options(options, {"a.tif", "--budget", "b.tif", "--card", "c.toml", "c.tif"});
  EXPECT_THAT(given.operands, ElementsAre("a.tif", "b.tif", "c.tif"));
  EXPECT_THAT(given.values.at("card"), ElementsAre("c.toml"));
  EXPECT_THAT(given.values.at("budget"), ElementsAre(""));
  EXPECT_FALSE(given.values.contains("area"));
}

TEST(ParseOptions, TakesValuesBehindAnEqualsSign) {
  EXPECT_THAT(parse_options(options, {"--area=1,2,3,4=-2"}).values.at("area"),
              ElementsAre("1,2,3,4=-2"));
}

TEST(ParseOptions, TakesEverythingBehindTwoHyphensAsOperands) {
  EXPECT_THAT(parse_options(options, {"--", "--card", "-x"}).operands, ElementsAre("--card", "-x"));
}

TEST(ParseOptions, TakesAHyphenAndAnEmptyWordAsOperands) {
  EXPECT_THAT(parse_options(options, {"-", ""}).operands, ElementsAre("-", ""));
}

TEST(ParseOptions, RepeatsOnlyWhatMayRepeat) {
  EXPECT_THAT(parse_options(options, {"--area", "a", "--area", "b"}).values.at("area"),
              ElementsAre("a", "b"));
  EXPECT_THAT(refusal({"--card", "a", "--card", "b"}),
              HasSubstr("--card' is given more than once"));
  EXPECT_THAT(refusal({"--budget", "--budget"}), HasSubstr("--budget' is given more than once"));
}

TEST(ParseOptions, RefusesWhatNoOptionIs) {
  EXPECT_THAT(refusal({"--colour"}), HasSubstr("--colour"));
  EXPECT_THAT(refusal({"-c", "x"}), HasSubstr("-c"));
  // An option cut short may become another one's name later.
  EXPECT_THAT(refusal({"--car", "x"}), HasSubstr("--car"));
}

TEST(ParseOptions, RefusesAnOptionWithoutItsValueAndAFlagWithOne) {
  EXPECT_THAT(refusal({"a.tif", "--card"}), HasSubstr("--card"));
  EXPECT_THAT(refusal({"--budget=yes"}), HasSubstr("--budget"));
}

}  // namespace
}  // namespace fogline
