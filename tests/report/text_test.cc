#include "record/invented_roll.h"

#include <fogline/report/text.h>

#include <algorithm>
#include <sstream>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

std::string text_of(RollMeasurement roll, TextOptions options = {}) {
  return text_from_record(record_from_measurement(std::move(roll), "0.1.0"), options);
}

TEST(Text, BeginsWithTheVerdict) {
  TextOptions wide;
  wide.width = 400;
  EXPECT_THAT(text_of(invented::roll(), wide),
              StartsWith("In one breath\n  Three frames on 135 film: base plus fog 0.28 ± 0.03, "
                         "picture densities 0.35 to 1.42 (median range 0.98 ± 0.12), which asks "
                         "for paper of about log range 0.98.\n"));
}

TEST(Text, HoldsEveryNumberOfAFrameWithItsDoubt) {
  EXPECT_THAT(text_of(invented::roll()),
              HasSubstr("  2         0.41 ± 0.03  0.83 ± 0.05  1.42 ± 0.12  1.01 ± 0.11  1.0\n"));
}

TEST(Text, SaysWhatIsMissingAndWhy) {
  RollMeasurement roll = invented::roll();
  FrameMeasurement& frame = roll.scans.front().frames[1];
  frame.tone.highlight.reset();
  frame.reasons["highlight"] = "The frame is cut off.";
  const std::string text = text_of(roll);
  EXPECT_THAT(text, HasSubstr("0.83 ± 0.05  –            1.01"));
  EXPECT_THAT(text, HasSubstr("- Frame 2: The frame is cut off.\n"));
}

TEST(Text, CountsARepeatedFrameOnce) {
  RollMeasurement roll = invented::roll();
  roll.scans.front().frames[2].repeats_frame = 1;
  const std::string text = text_of(roll);
  EXPECT_THAT(text, HasSubstr("Two frames on 135 film"));
  EXPECT_THAT(text, HasSubstr("Frame 3 shows the same picture as frame 1"));
}

TEST(Text, SaysThatDensitiesCountFromClearFilm) {
  RollMeasurement roll = invented::roll();
  ScanMeasurement& scan = roll.scans.front();
  scan.fitness = Fitness::relative;
  scan.densities_above = DensitiesAbove::base;
  scan.zero.source = ZeroSource::none;
  scan.base_fog.reset();
  TextOptions wide;
  wide.width = 400;
  const std::string text = text_of(roll, wide);
  EXPECT_THAT(text, HasSubstr("base plus fog can't be told, picture densities above clear film"));
  EXPECT_THAT(text, HasSubstr("pull the strip 3 mm out of its mask"));
}

TEST(Text, OfAnUnfitScanGivesTheReasonAndTheCure) {
  const std::string text = text_of(invented::unfit_roll());
  EXPECT_THAT(text, HasSubstr("Unfit: nothing can be measured"));
  EXPECT_THAT(text, HasSubstr("There is no film in the picture"));
  EXPECT_THAT(text, HasSubstr("How to scan better"));
  EXPECT_THAT(text, Not(HasSubstr("Shadow and highlight")));
}

TEST(Text, OfUnreadFilesAloneHoldsTheirSentences) {
  RollMeasurement roll;
  roll.unread.push_back({"gone.tif", "gone.tif isn't there."});
  const std::string text = text_of(roll);
  EXPECT_THAT(text, HasSubstr("No scan could be read."));
  EXPECT_THAT(text, HasSubstr("gone.tif isn't there."));
}

TEST(Text, HasEscapeCodesOnlyWhereAsked) {
  EXPECT_THAT(text_of(invented::roll()), Not(HasSubstr("\x1b")));
  TextOptions color;
  color.color = true;
  EXPECT_THAT(text_of(invented::roll(), color), HasSubstr("\x1b[1mClear film\x1b[0m"));
}

TEST(Text, LetsNoFileNameCommandTheTerminal) {
  const std::string text = text_of(invented::roll("a\x1b[2Jb\xC2\x9B.tif"));
  EXPECT_THAT(text, Not(HasSubstr("\x1b")));
  EXPECT_THAT(text, HasSubstr("a?[2Jb?.tif"));
}

TEST(Text, KeepsToTheWidth) {
  for (const int width : {40, 60, 80}) {
    TextOptions options;
    options.width = width;
    std::istringstream lines(text_of(invented::roll(), options));
    std::string line;
    while (std::getline(lines, line)) {
      const auto columns =
          std::count_if(line.begin(), line.end(), [](char c) { return (c & 0xC0) != 0x80; });
      EXPECT_LE(columns, width) << line;
      EXPECT_FALSE(line.ends_with(' ')) << line;
    }
  }
}

TEST(Text, NamesABathOnlyBesideTheCautions) {
  EXPECT_THAT(text_of(invented::roll()), Not(HasSubstr("Cautions")));
  for (const char* message : {"A weak developer looks like this.", "Use fresh Fixer."}) {
    RollMeasurement roll = invented::roll();
    roll.scans.front().cautions.push_back({"invented", Severity::note, message});
    const std::string text = text_of(roll);
    EXPECT_THAT(text, HasSubstr("Cautions\n")) << message;
    EXPECT_THAT(text, HasSubstr("gloves")) << message;
    EXPECT_THAT(text, HasSubstr("licensed collection")) << message;
  }
}

}  // namespace
}  // namespace fogline
