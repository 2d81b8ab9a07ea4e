#include "words/phrases.h"

#include "record/invented_roll.h"
#include "said.h"
#include "words/schema_words.h"

#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

/// Indicative for no reason that is seen.
ScanMeasurement plain_scan() {
  ScanMeasurement scan = invented::scan("strip.tif");
  scan.info.bits = 16;
  scan.info.transfer.source = TransferSource::icc_profile;
  scan.cautions.clear();
  return scan;
}

TEST(Phrases, NameEveryPlaceByItself) {
  std::set<std::string_view> zeros;
  for (const auto& row : schema_words<ZeroSource>().rows) {
    zeros.insert(place_phrase(row.kind));
  }
  EXPECT_EQ(zeros.size(), schema_words<ZeroSource>().rows.size());
  std::set<std::string_view> fogs;
  for (const auto& row : schema_words<BaseFogSource>().rows) {
    fogs.insert(place_phrase(row.kind));
  }
  EXPECT_EQ(fogs.size(), schema_words<BaseFogSource>().rows.size());
  std::set<std::string_view> films;
  for (const auto& row : schema_words<FilmFormat>().rows) {
    films.insert(film_phrase(row.kind));
    EXPECT_THAT(std::string(film_phrase(row.kind)), HasSubstr("film"));
  }
  EXPECT_EQ(films.size(), schema_words<FilmFormat>().rows.size());
}

TEST(Phrases, CountInWordsUpToTwelve) {
  EXPECT_EQ(count_word(0), "no");
  EXPECT_EQ(count_word(12), "twelve");
  EXPECT_EQ(count_word(13), "13");
}

TEST(Phrases, MakeOnlyASmallLetterLarge) {
  EXPECT_EQ(capitalised("no film"), "No film");
  EXPECT_EQ(capitalised("No film"), "No film");
  EXPECT_EQ(capitalised("13 frames"), "13 frames");
  EXPECT_EQ(capitalised("über"), "über");
  EXPECT_EQ(capitalised(""), "");
}

TEST(FitnessSentence, IsAnotherForEveryFitness) {
  std::set<std::string> sentences;
  for (const auto& row : schema_words<Fitness>().rows) {
    ScanMeasurement scan = plain_scan();
    scan.fitness = row.kind;
    const std::string said = fitness_sentence(scan);
    EXPECT_EQ(fault_of(std::string_view(said)), "") << said;
    EXPECT_TRUE(said.ends_with('.')) << said;
    sentences.insert(said);
  }
  EXPECT_EQ(sentences.size(), schema_words<Fitness>().rows.size());
}

TEST(FitnessSentence, KnowsACalibrationOfOtherSettings) {
  ScanMeasurement scan = plain_scan();
  scan.fitness = Fitness::comparable;
  EXPECT_THAT(fitness_sentence(scan), HasSubstr("no wedge has calibrated this scanner"));
  scan.calibration = ScanCalibration{};
  EXPECT_THAT(fitness_sentence(scan), HasSubstr("with other settings"));
  EXPECT_THAT(fitness_sentence(scan), Not(HasSubstr("no wedge")));
}

TEST(FitnessSentence, SaysWhatWeakensAnIndicativeScan) {
  ScanMeasurement scan = plain_scan();
  const auto indicative = [](const std::string& why) {
    return StartsWith("Indicative: " + why + ". Good for the direction");
  };
  EXPECT_THAT(fitness_sentence(scan), indicative("see the cautions"));
  scan.info.bits = 8;
  EXPECT_THAT(fitness_sentence(scan), indicative("the file has 8 bits"));
  scan.info.transfer.source = TransferSource::assumed;
  EXPECT_THAT(fitness_sentence(scan),
              indicative("the tone curve is assumed and the file has 8 bits"));
  scan.cautions = {{Severity::caution, fact_of(CautionKind::bare_light_partly_clipped)}};
  EXPECT_THAT(fitness_sentence(scan),
              indicative("the tone curve is assumed, the file has 8 bits and the bare light is "
                         "clipped"));
}

TEST(FitnessSentence, SaysWhatWeakensACalibratedScan) {
  ScanMeasurement scan = plain_scan();
  scan.calibration = ScanCalibration{};
  scan.calibration->shape_only = true;
  EXPECT_THAT(fitness_sentence(scan), HasSubstr("only the response's shape"));
  scan.calibration->shape_only = false;
  scan.zero.source = ZeroSource::scanner_file;
  EXPECT_THAT(fitness_sentence(scan), HasSubstr("remembered, not seen"));
}

TEST(Cautions, AreKnownByTheirFamily) {
  ScanMeasurement scan = plain_scan();
  EXPECT_FALSE(has_caution_of(scan, CautionFamily::glare));
  scan.cautions = {{Severity::note, fact_of(CautionKind::glare_of_calibration)}};
  EXPECT_TRUE(has_caution_of(scan, CautionFamily::glare));
  EXPECT_FALSE(has_caution_of(scan, CautionFamily::clipping));
}

}  // namespace
}  // namespace fogline
