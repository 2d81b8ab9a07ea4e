#include "terminal/text.h"

#include "record/invented_judgement.h"

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

TextOptions whole(int width = 80) {
  TextOptions options;
  options.width = width;
  options.full = true;
  return options;
}

std::string text_of(RollMeasurement roll, TextOptions options = whole()) {
  return text_from_record(invented::record(std::move(roll)), options);
}

TEST(Text, BeginsWithTheVerdict) {
  for (const bool full : {false, true}) {
    TextOptions wide = whole(400);
    wide.full = full;
    EXPECT_THAT(
        text_from_record(invented::short_record(), wide),
        StartsWith("In one breath\n  Development was short: contrast about 0.42 ± 0.08, aimed "
                   "at 0.58. Light was right within half a stop.\n  Also seen: dye left in "
                   "the film (97 %), drying marks (93 %).\n"));
    EXPECT_THAT(text_from_record(invented::normal_record(), wide),
                StartsWith("In one breath\n  Light and development were right: contrast about "
                           "0.57 ± 0.07, aimed at 0.58, light within one stop.\n"));
    EXPECT_THAT(text_from_record(invented::undecided_record(), wide),
                StartsWith("In one breath\n  This scan can't tell light from time: development "
                           "short 41 %, light short 36 %, all right 22 %.\n"));
  }
}

TEST(Text, SaysWhatWasReadOfTheFrames) {
  const TextOptions wide = whole(400);
  EXPECT_THAT(text_of(invented::roll(), wide),
              HasSubstr("Three frames on 135 film: base plus fog 0.28 ± 0.03, picture densities "
                        "0.35 to 1.42 (median range 0.98 ± 0.12), which asks for paper of about "
                        "log range 0.98.\n"));
}

TEST(Text, SetsTheNextRollAsAPersonDoes) {
  const std::string text = text_from_record(invented::short_record(), whole());
  EXPECT_THAT(text, HasSubstr("Next roll\n"
                              "  develop  10:00 at 20 °C, 33 % longer, ± 1:20\n"
                              "  expose   1/3 stop more light, exposure index 250\n"
                              "  stop     0:30, as before\n"
                              "  fix      6:00, make it up fresh\n"
                              "  wash     fills of 5, 10, 20, 30 inversions, longer\n"));
  const std::string normal = text_from_record(invented::normal_record(), whole());
  EXPECT_THAT(normal, HasSubstr("  develop  as long as before, at the same temperature\n"
                                "  expose   as before\n"));
  EXPECT_THAT(normal, HasSubstr("  fix      can't be told\n  wash     10:00\n"));
}

TEST(Text, TellsTintMarksAndProbabilities) {
  const TextOptions wide = whole(400);
  const std::string text = text_from_record(invented::short_record(), wide);
  EXPECT_THAT(text, HasSubstr("Dye is left in the film: 0.08 ± 0.02 in the channel that it darkens "
                              "most (97 %).\n"));
  EXPECT_THAT(text, HasSubstr("  development short  79 %       ================\n"));
  EXPECT_THAT(text, HasSubstr("What would tell most: Scan the fogged leader too"));
  EXPECT_THAT(text,
              HasSubstr("1   drying mark             2.2 mm        denser by 0.12    93 %\n"));
  EXPECT_THAT(text,
              HasSubstr("4   scratch                 128 mm        –                 97 %\n"));
  EXPECT_THAT(text_from_record(invented::normal_record(), wide),
              HasSubstr("No tint shows (98 %); one of 0.03 would.\n"));
}

TEST(Text, GivesAFilmsOwnColourTheBenefitOfTheDoubt) {
  RollRecord record = invented::short_record();
  record.measurement.scans.front().tint.may_be_stock = true;
  const TextOptions wide = whole(400);
  const std::string text = text_from_record(record, wide);
  EXPECT_THAT(text, HasSubstr("dye left in the film (97 %, unless the film's base is so tinted)"));
  EXPECT_THAT(text, HasSubstr("It may be this film's own colour"));
}

TEST(Text, HoldsEveryNumberOfAFrameWithItsDoubt) {
  EXPECT_THAT(text_of(invented::roll()),
              HasSubstr("  2       0.41 ± 0.03  0.83 ± 0.05  1.42 ± 0.12  1.01 ± 0.11  1.0\n"));
}

TEST(Text, SaysWhatIsMissingAndWhy) {
  RollMeasurement roll = invented::roll();
  FrameMeasurement& frame = roll.scans.front().frames[1];
  frame.tone.highlight = Unknown::frame_hidden;
  const std::string text = text_of(roll);
  EXPECT_THAT(text, HasSubstr("0.83 ± 0.05  –            1.01"));
  EXPECT_THAT(text, HasSubstr("- Frame 2: Too little of the frame is in sight.\n"));
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
  scan.base_fog = Unknown::no_zero_for_base;
  const TextOptions wide = whole(400);
  const std::string text = text_of(roll, wide);
  EXPECT_THAT(text, HasSubstr("base plus fog can't be told, picture densities above clear film"));
  EXPECT_THAT(text, HasSubstr("pull the strip 3 mm out of its mask"));
}

TEST(Text, OfAnUnfitScanGivesTheReasonAndTheCure) {
  const std::string text = text_of(invented::unfit_roll());
  EXPECT_THAT(text, HasSubstr("Unfit: nothing can be measured"));
  EXPECT_THAT(text, HasSubstr("No film was found"));
  EXPECT_THAT(text, HasSubstr("How to scan better"));
  EXPECT_THAT(text, Not(HasSubstr("Shadow and highlight")));
}

TEST(Text, OfUnreadFilesAloneHoldsTheirSentences) {
  RollMeasurement roll;
  roll.unread.push_back({"gone.tif", {Refusal::cant_open, {}, {"No such file or directory"}, {}}});
  const std::string text = text_of(roll);
  EXPECT_THAT(text, HasSubstr("No scan could be read."));
  EXPECT_THAT(text, HasSubstr("gone.tif can't be opened (No such file or directory)"));
}

TEST(Text, HasEscapeCodesOnlyWhereAsked) {
  EXPECT_THAT(text_of(invented::roll()), Not(HasSubstr("\x1b")));
  TextOptions color = whole();
  color.color = true;
  EXPECT_THAT(text_of(invented::roll(), color), HasSubstr("\x1b[1mClear film\x1b[0m"));
}

TEST(Text, LetsNoFileNameCommandTheTerminal) {
  const std::string text = text_of(invented::roll("a\x1b[2Jb\xC2\x9B.tif"));
  EXPECT_THAT(text, Not(HasSubstr("\x1b")));
  EXPECT_THAT(text, HasSubstr("a?[2Jb?.tif"));
}

TEST(Text, CarriesTheCautionsWhereARecipeNamesBaths) {
  EXPECT_THAT(text_of(invented::roll()), Not(HasSubstr("Cautions")));
  const std::string text = text_from_record(invented::normal_record(), whole());
  EXPECT_THAT(text, HasSubstr("Cautions\n"));
  EXPECT_THAT(text, HasSubstr("gloves"));
  EXPECT_THAT(text, HasSubstr("licensed collection"));
}

}  // namespace
}  // namespace fogline
