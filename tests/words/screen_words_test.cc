#include "words/screen_words.h"

#include "record/invented_reports.h"
#include "said.h"

#include <algorithm>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

/// A roll of `count` scans named 1.tif, 2.tif, ... without any caution.
RollRecord roll_of_scans(int count) {
  RollMeasurement roll;
  for (int i = 1; i <= count; ++i) {
    roll.scans.push_back(invented::scan("rolls/" + std::to_string(i) + ".tif"));
    roll.scans.back().cautions.clear();
  }
  return invented::record(std::move(roll));
}

void caution_scan(RollRecord& record, std::size_t scan, Severity severity, CautionKind kind) {
  record.measurement.scans[scan].cautions.push_back({severity, fact_of(kind)});
}

/// The objections that hold some words.
std::vector<Objection> objections_with(const RollRecord& record, const std::string& words) {
  std::vector<Objection> found = objections_of(record);
  std::erase_if(found, [&](const Objection& objection) {
    return objection.sentence.find(words) == std::string::npos;
  });
  return found;
}

TEST(Objections, BeginWithFilesThatWereNotRead) {
  RollRecord record = roll_of_scans(1);
  caution_scan(record, 0, Severity::unfit, CautionKind::inverted);
  record.measurement.unread.push_back(invented::gone_file());
  const auto objections = objections_of(record);
  EXPECT_EQ(objections[0].severity, Severity::unfit);
  EXPECT_THAT(objections[0].sentence, HasSubstr("gone.tif"));
  EXPECT_THAT(objections[1].sentence, HasSubstr("turned into a positive"));
}

TEST(Objections, StandWithTheWeightiestFirstAndDoubtsLast) {
  RollRecord record = roll_of_scans(1);
  caution_scan(record, 0, Severity::note, CautionKind::channels_unused);
  caution_scan(record, 0, Severity::caution, CautionKind::glare_strong);
  caution_scan(record, 0, Severity::unfit, CautionKind::inverted);
  const auto objections = objections_of(record);
  EXPECT_TRUE(std::is_sorted(
      objections.begin(), objections.end(),
      [](const Objection& a, const Objection& b) { return a.severity > b.severity; }));
  EXPECT_EQ(objections.front().severity, Severity::unfit);
  EXPECT_THAT(objections.back().sentence, StartsWith("Scanners light the film"));
}

TEST(Objections, NameTheScansThatTheyAreFor) {
  RollRecord record = roll_of_scans(4);
  const auto files = [&] { return objections_with(record, "Much stray light").front().files; };
  caution_scan(record, 1, Severity::caution, CautionKind::glare_strong);
  EXPECT_EQ(files(), "2.tif: ");
  caution_scan(record, 3, Severity::caution, CautionKind::glare_strong);
  EXPECT_EQ(files(), "2.tif and 4.tif: ");
  caution_scan(record, 0, Severity::caution, CautionKind::glare_strong);
  EXPECT_EQ(files(), "3 of 4 scans: ");
  caution_scan(record, 2, Severity::caution, CautionKind::glare_strong);
  EXPECT_EQ(files(), "");
  EXPECT_EQ(objections_with(record, "Much stray light").size(), 1U);
}

TEST(Objections, KeepCautionsApartThatTellOtherNumbers) {
  RollRecord record = roll_of_scans(2);
  record.measurement.scans[0].cautions = {
      {Severity::caution, fact_of(CautionKind::scanner_zero, {0.05})}};
  record.measurement.scans[1].cautions = {
      {Severity::caution, fact_of(CautionKind::scanner_zero, {0.12})}};
  EXPECT_EQ(objections_with(record, "The bare light reads").size(), 2U);
}

// A doubt whose reason a caution tells isn't told again; another's is.
TEST(Objections, LeaveOutDoubtsThatACautionTells) {
  RollRecord record = roll_of_scans(1);
  record.measurement.scans[0].veiling_glare = Unknown::nothing_opaque;
  record.measurement.scans[0].tint.kind = Unknown::grey_scan;
  EXPECT_EQ(objections_with(record, "Nothing opaque").size(), 1U);
  EXPECT_EQ(objections_with(record, "scan is grey").size(), 1U);
  caution_scan(record, 0, Severity::caution, CautionKind::glare_unknown);
  EXPECT_EQ(objections_with(record, "Nothing opaque").size(), 1U);
  EXPECT_EQ(objections_with(record, "Nothing opaque").front().severity, Severity::caution);
  EXPECT_EQ(objections_with(record, "scan is grey").size(), 1U);
  caution_scan(record, 0, Severity::caution, CautionKind::grey_scan);
  EXPECT_EQ(objections_with(record, "scan is grey").size(), 1U);
  EXPECT_EQ(objections_with(record, "scan is grey").front().severity, Severity::caution);
  record.measurement.scans[0].base_fog = Unknown::no_zero_for_base;
  caution_scan(record, 0, Severity::caution, CautionKind::bare_light_hidden);
  EXPECT_EQ(objections_with(record, "No bare light path").size(), 1U);
}

TEST(Objections, AreSentencesForEveryReport) {
  for (const auto& [name, record] : invented::all_records()) {
    for (const Objection& objection : objections_of(record)) {
      EXPECT_EQ(fault_of(std::string_view(objection.sentence)), "") << name;
      EXPECT_TRUE(objection.files.empty() || objection.files.ends_with(": ")) << objection.files;
    }
  }
}

TEST(RestSentence, NamesThePageOnlyWhereOneWasWritten) {
  EXPECT_THAT(rest_sentence("strip.report.html"),
              AllOf(HasSubstr("strip.report.html"), HasSubstr("--full")));
  EXPECT_EQ(rest_sentence({}), "All of it: with --full.");
}

}  // namespace
}  // namespace fogline
