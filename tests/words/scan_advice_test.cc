#include "record/invented_judgement.h"
#include "words/story.h"

#include <functional>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// A roll whose scan leaves nothing to wish.
RollRecord well_scanned() {
  RollRecord record = invented::normal_record();
  ScanMeasurement& scan = record.measurement.scans.front();
  scan.info.bits = 16;
  scan.info.transfer.source = TransferSource::icc_profile;
  scan.pixels_per_mm = 47.2;
  scan.cautions.clear();
  return record;
}

std::vector<std::string> advice_after(const std::function<void(ScanMeasurement&)>& change) {
  RollRecord record = well_scanned();
  change(record.measurement.scans.front());
  return scan_advice(record);
}

TEST(ScanAdvice, LeavesAGoodScanAlone) {
  EXPECT_THAT(scan_advice(well_scanned()), IsEmpty());
  EXPECT_THAT(scan_advice(invented::record(RollMeasurement{})), IsEmpty());
}

TEST(ScanAdvice, AnswersEachWeaknessAlone) {
  EXPECT_THAT(advice_after([](auto& scan) { scan.info.bits = 8; }),
              ElementsAre(HasSubstr("16 bits")));
  EXPECT_THAT(advice_after([](auto& scan) { scan.info.lossy = true; }),
              ElementsAre(HasSubstr("TIFF")));
  EXPECT_THAT(advice_after([](auto& scan) { scan.info.channels = 1; }),
              ElementsAre(HasSubstr("in colour")));
  EXPECT_THAT(advice_after([](auto& scan) { scan.zero.source = ZeroSource::none; }),
              ElementsAre(HasSubstr("bare light through beside the film")));
  EXPECT_THAT(advice_after([](auto& scan) { scan.info.transfer.source = TransferSource::assumed; }),
              ElementsAre(HasSubstr("colour profile")));
}

TEST(ScanAdvice, AsksForMorePixelsOnlyWhereTheirCountIsKnown) {
  EXPECT_THAT(advice_after([](auto& scan) { scan.pixels_per_mm = 11.7; }),
              ElementsAre(HasSubstr("300 pixels an inch")));
  EXPECT_THAT(advice_after([](auto& scan) { scan.pixels_per_mm = 11.9; }), IsEmpty());
}

TEST(ScanAdvice, MissesNoBareLightWhereNoFilmWasFound) {
  EXPECT_THAT(advice_after([](auto& scan) {
                scan.zero.source = ZeroSource::none;
                scan.strips.clear();
              }),
              IsEmpty());
}

TEST(ScanAdvice, IsGivenOnceForAllScansOfARoll) {
  RollRecord record = well_scanned();
  record.measurement.scans.front().info.bits = 8;
  record.measurement.scans.push_back(record.measurement.scans.front());
  EXPECT_EQ(scan_advice(record).size(), 1U);
}

}  // namespace
}  // namespace fogline
