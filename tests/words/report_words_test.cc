#include "words/report_words.h"

#include "record/invented_reports.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::ElementsAre;
using testing::EndsWith;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

TEST(ReportName, IsTheFirstFilesWithoutFolders) {
  EXPECT_EQ(short_name("a/b/c.tif"), "c.tif");
  EXPECT_EQ(short_name("c.tif"), "c.tif");
  RollMeasurement roll;
  EXPECT_EQ(report_name(roll), "no scan");
  roll.unread.push_back({"rolls/gone.tif", {}});
  EXPECT_EQ(report_name(roll), "gone.tif");
  roll.scans.push_back(invented::scan("rolls/strip.tif"));
  EXPECT_EQ(report_name(roll), "strip.tif");
}

TEST(ReportEyebrow, TellsTheCardOrElseTheFiles) {
  RollRecord record = invented::record(invented::roll());
  EXPECT_EQ(report_eyebrow(record), "strip.tif");
  record.measurement.scans.push_back(invented::scan("second.tif"));
  EXPECT_EQ(report_eyebrow(record), "strip.tif and others");
  record.card = invented::card();
  EXPECT_EQ(report_eyebrow(record), "Roll 12 · grey box, iso 400 · 2025-10-09");
  record.card->film.reset();
  EXPECT_EQ(report_eyebrow(record), "Roll 12 · 2025-10-09");
}

TEST(BaseFogSentence, SaysHowMuchWhereAndOverWhichArea) {
  ScanMeasurement scan = invented::scan("strip.tif");
  EXPECT_THAT(base_fog_sentence(scan, DensityUnits::density),
              StartsWith("Base plus fog is 0.28 ± 0.03, read on the rebate over 212 mm²: "));
  scan.base_fog->area_mm2.reset();
  EXPECT_THAT(base_fog_sentence(scan, DensityUnits::stops),
              StartsWith("Base plus fog is 0.94 ± 0.10 stops, read on the rebate: "));
  scan.base_fog = {};
  EXPECT_EQ(base_fog_sentence(scan, DensityUnits::density), "Base plus fog isn't known.");
  scan.base_fog = Unknown::no_zero_for_base;
  EXPECT_THAT(base_fog_sentence(scan, DensityUnits::density),
              StartsWith("Base plus fog isn't known. No bare light path"));
}

TEST(ChannelSentence, GivesRedGreenBlueOrNothing) {
  ScanMeasurement scan = invented::scan("strip.tif");
  EXPECT_THAT(channel_sentence(scan, DensityUnits::density),
              EndsWith("red 0.29 ± 0.03, green 0.28 ± 0.03, blue 0.31 ± 0.04."));
  scan.base_fog->channels.reset();
  EXPECT_EQ(channel_sentence(scan, DensityUnits::density), "");
  scan.base_fog = Unknown::no_densities;
  EXPECT_EQ(channel_sentence(scan, DensityUnits::density), "");
}

TEST(BeliefSentences, TellWhatIsKnownAlone) {
  Judgement judgement;
  EXPECT_THAT(belief_sentences(judgement), IsEmpty());
  judgement.light_or_time.exposure_stops = invented::density(-0.6, 1.1);
  EXPECT_THAT(belief_sentences(judgement), ElementsAre(HasSubstr("−0.6 ± 1.1 stops")));
  judgement.light_or_time.contrast_index = invented::density(0.48, 0.16);
  ASSERT_EQ(belief_sentences(judgement).size(), 2U);
  EXPECT_THAT(
      belief_sentences(judgement).front(),
      AllOf(HasSubstr("0.48 ± 0.16; the aim is 0.58 ± 0.05"), EndsWith("diffusion light).")));
}

TEST(WouldTell, IsSilentWhereNothingIsOpen) {
  LightOrTime weighed;
  EXPECT_EQ(would_tell_sentence(weighed), "");
  weighed.would_tell_most = FurtherMeasurement::meter_walls;
  EXPECT_THAT(would_tell_sentence(weighed), HasSubstr("evenly lit wall"));
}

TEST(FindingsBesideCauses, LeaveTheFiveCausesToTheirTable) {
  RollRecord record = invented::short_record();
  record.judgement.findings.push_back(finding_of(Cause::weak_developer, 0.6));
  record.judgement.findings.push_back(finding_of(Cause::drift, 0.5));
  auto found = findings_beside_causes(record);
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0]->cause, Cause::weak_developer);
  record.judgement.light_or_time.causes = Unknown::no_picture;
  EXPECT_EQ(findings_beside_causes(record).size(), 4U);
}

TEST(ZonesSentence, DashesZonesThatAreNotTold) {
  ZonePlacement placement;
  placement.metered = true;
  placement.zones = {{0, 0.0, Unknown::needs_less_exposure},
                     {1, 0.3, invented::density(0.104, 0.01)}};
  EXPECT_EQ(zones_sentence(placement),
            "Net density of zones 0 to X: – 0.10 (the metered tone on Zone V).");
  placement.metered = false;
  EXPECT_THAT(zones_sentence(placement), EndsWith("(Zone I laid on the speed point)."));
}

TEST(MarkSentences, TellNoneFromNotLookedFor) {
  ScanMeasurement scan = invented::scan("strip.tif");
  EXPECT_THAT(mark_sentences(scan, {}), ElementsAre("No mark was found."));
  scan.marks_limit = fact_of(Unknown::marks_too_coarse, {12.0});
  EXPECT_THAT(mark_sentences(scan, {}), ElementsAre(StartsWith("Seen at 12 pixels")));
  scan.marks_limit.reset();
  scan.marks = invented::marks();
  MarkList list;
  list.numbered = {{1, scan.marks.data()}};
  EXPECT_THAT(mark_sentences(scan, list), IsEmpty());
  list.others = {&scan.marks[2], &scan.marks[2]};
  EXPECT_THAT(mark_sentences(scan, list),
              ElementsAre(EndsWith("without a number: 2 pieces of dust.")));
}

TEST(FrameNote, TellsARepeatBeforeACut) {
  FrameMeasurement frame;
  EXPECT_EQ(frame_note(frame), "");
  frame.inferred = true;
  EXPECT_EQ(frame_note(frame), "(blank?)");
  frame.cut = true;
  EXPECT_EQ(frame_note(frame), "(cut)");
  frame.repeats_frame = 4;
  EXPECT_EQ(frame_note(frame), "(4 again)");
}

}  // namespace
}  // namespace fogline
