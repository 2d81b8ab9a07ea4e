#include "words/story.h"

#include "record/invented_judgement.h"
#include "words/schema_words.h"

#include <algorithm>
#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

/// The invented roll whose frames miss tones: what stays unsure of it.
std::vector<std::string> unsure_after(void (*change)(ScanMeasurement&)) {
  RollRecord record = invented::normal_record();
  record.measurement.contrast.contrast_index = invented::density(0.57, 0.1);
  change(record.measurement.scans.front());
  return unsure_sentences(record);
}

TEST(Unsure, LeavesOnlyTheScannersAngleOfASoundRoll) {
  const auto said = unsure_after([](ScanMeasurement& scan) { scan.exposed_wedge_steps = 21; });
  ASSERT_EQ(said.size(), 1U);
  EXPECT_THAT(said.front(), StartsWith("Scanners light the film from one side"));
}

// Who has told the device isn't asked for it, and learns what was taken off.
TEST(Unsure, KnowsAToldDevice) {
  const auto said = unsure_after([](ScanMeasurement& scan) {
    scan.exposed_wedge_steps = 21;
    scan.device_told = true;
  });
  ASSERT_EQ(said.size(), 1U);
  EXPECT_THAT(said.front(), HasSubstr("was taken off"));
  EXPECT_THAT(said.front(), Not(HasSubstr("--device")));
}

TEST(Unsure, TellsFramesThatMissAToneForOneReasonTogether) {
  const auto said = unsure_after([](ScanMeasurement& scan) {
    for (FrameMeasurement& frame : scan.frames) {
      frame.tone.range = Unknown::frame_too_dense;
      frame.tone.paper_range = Unknown::frame_too_dense;
    }
    scan.frames[1].tone.shadow = Unknown::frame_hidden;
  });
  EXPECT_THAT(said, Contains(StartsWith("Frames 1, 2 and 3: The frame is denser")));
  EXPECT_THAT(said, Contains("Frame 2: Too little of the frame is in sight."));
  const auto two = unsure_after([](ScanMeasurement& scan) {
    scan.frames[0].tone.middle = Unknown::frame_hidden;
    scan.frames[2].tone.middle = Unknown::frame_hidden;
  });
  EXPECT_THAT(two, Contains(StartsWith("Frames 1 and 3: ")));
}

TEST(Unsure, SaysWhichFrameIsShownAgain) {
  const auto said = unsure_after([](ScanMeasurement& scan) { scan.frames[2].repeats_frame = 1; });
  EXPECT_THAT(said, Contains("Frame 3 shows the same picture as frame 1 and is counted once."));
}

TEST(Unsure, MissesNoLeaderNorEdgePrintNorCalibration) {
  const auto said = unsure_after([](ScanMeasurement& scan) {
    scan.leader = Unknown::no_leader;
    scan.edge_print = Unknown::no_edge_print;
    scan.calibration = Unknown::not_calibrated;
  });
  EXPECT_THAT(said, Not(Contains(HasSubstr("leader"))));
  EXPECT_THAT(said, Not(Contains(HasSubstr("dge print"))));
  EXPECT_THAT(said, Not(Contains(HasSubstr("No calibration"))));
}

TEST(Unsure, SaysNothingWhereNobodySaidWhy) {
  for (const std::string& sentence : unsure_after([](ScanMeasurement& scan) {
         scan.base_fog = {};
         scan.veiling_glare = {};
       })) {
    EXPECT_FALSE(sentence.empty());
    EXPECT_THAT(sentence, Not(HasSubstr("What is known of this roll")));
  }
}

TEST(Unsure, TellsWhatScansShareOnceAndWhatItIs) {
  RollRecord record = invented::normal_record();
  RollMeasurement& roll = record.measurement;
  roll.scans.front().veiling_glare = Unknown::nothing_opaque;
  roll.scans.front().marks_limit = fact_of(Unknown::marks_too_coarse, {12.4});
  roll.scans.push_back(roll.scans.front());
  const std::vector<Unsure> unsure = unsure_of(record);
  const auto count_of = [&](Unknown why) {
    return std::count_if(unsure.begin(), unsure.end(),
                         [&](const Unsure& each) { return each.why == why; });
  };
  EXPECT_EQ(count_of(Unknown::nothing_opaque), 1);
  EXPECT_EQ(count_of(Unknown::marks_too_coarse), 1);
  EXPECT_THAT(unsure_sentences(record), Contains(HasSubstr("12 pixels a millimetre")));
}

TEST(Unsure, KnowsSilverThatAWedgeOfSilverTookOut) {
  const auto angle_said = [](std::optional<CalibrationMethod> method) {
    RollRecord record = invented::normal_record();
    if (method) {
      ScanCalibration calibration;
      calibration.method = *method;
      record.measurement.scans.front().calibration = calibration;
    }
    return unsure_sentences(record).back();
  };
  const std::string by_silver = angle_said(CalibrationMethod::wedge);
  EXPECT_THAT(by_silver, HasSubstr("The wedge takes that out"));
  EXPECT_EQ(angle_said(CalibrationMethod::nominal_wedge), by_silver);
  EXPECT_THAT(angle_said({}), HasSubstr("other people's numbers"));
  EXPECT_EQ(angle_said(CalibrationMethod::layers), angle_said({}));
  EXPECT_EQ(angle_said(CalibrationMethod::bracket), angle_said({}));
  EXPECT_THAT(unsure_sentences(invented::record(RollMeasurement{})), IsEmpty());
}

/// How a scan so changed was measured.
template <typename Change>
std::vector<std::string> method_after(const Change& change) {
  ScanMeasurement scan = invented::scan("strip.tif");
  change(scan);
  return method_sentences(scan);
}

TEST(Method, GivesSizeInPixelsAndScaleInMillimetresAndInches) {
  const std::string said = method_after([](ScanMeasurement&) {}).front();
  EXPECT_EQ(said, "1300 × 350 pixels, 8 bits, colour, 10.0 pixels a millimetre (254 an inch).");
  EXPECT_EQ(method_after([](ScanMeasurement& scan) {
              scan.info.channels = 1;
              scan.pixels_per_mm = Unknown::no_scale;
            }).front(),
            "1300 × 350 pixels, 8 bits, grey.");
}

TEST(Method, SaysHowCodesBecameLightAndWhoSaidSo) {
  std::set<std::string> said;
  const auto kinds = schema_words<TransferKind>().rows;
  const auto sources = schema_words<TransferSource>().rows;
  for (const auto& kind : kinds) {
    for (const auto& source : sources) {
      said.insert(method_after([&](ScanMeasurement& scan) {
        scan.info.transfer = {kind.kind, 2.2, source.kind};
      })[1]);
    }
  }
  EXPECT_EQ(said.size(), kinds.size() * sources.size());
}

TEST(Method, SaysThatACurveIsAssumedOnlyWhereItIs) {
  for (const TransferSource source :
       {TransferSource::icc_profile, TransferSource::file_tag, TransferSource::option,
        TransferSource::scanner_file, TransferSource::assumed}) {
    const std::string said =
        method_after([&](ScanMeasurement& scan) { scan.info.transfer.source = source; })[1];
    EXPECT_EQ(said.find("assumed") != std::string::npos, source == TransferSource::assumed) << said;
  }
}

TEST(Method, InventsNoExponent) {
  const auto said = [](std::optional<double> exponent) {
    return method_after([&](ScanMeasurement& scan) {
      scan.info.transfer = {TransferKind::power, exponent, TransferSource::option};
    })[1];
  };
  EXPECT_THAT(said(2.199), HasSubstr("by a power of 2.20, as you said"));
  EXPECT_THAT(said({}), HasSubstr("by a power, as you said"));
}

TEST(Method, TellsTheCalibrationByWhatItWasMadeOf) {
  const auto said = [](CalibrationMethod method, bool own, const std::string& reference) {
    return method_after([&](ScanMeasurement& scan) {
      ScanCalibration calibration;
      calibration.method = method;
      calibration.own_wedge = own;
      calibration.reference = reference;
      calibration.date = "2025-03-04";
      calibration.checksum = "a1b2";
      calibration.shown_to_density = 3.04;
      scan.calibration = calibration;
    })[2];
  };
  EXPECT_EQ(said(CalibrationMethod::wedge, true, "grey.csv"),
            "The scanner was calibrated by the wedge grey.csv in this scan on 2025-03-04 (a1b2), "
            "up to a density of 3.0.");
  EXPECT_THAT(said(CalibrationMethod::nominal_wedge, false, "21x0.15"),
              HasSubstr("nominal densities (21x0.15) on"));
  EXPECT_THAT(said(CalibrationMethod::layers, false, ""), HasSubstr("by layers of one filter on"));
  EXPECT_THAT(said(CalibrationMethod::bracket, false, ""), HasSubstr("by shutter times on"));
  EXPECT_THAT(said(CalibrationMethod::wedge, false, ""), HasSubstr("by a wedge on"));
  EXPECT_THAT(said(CalibrationMethod::nominal_wedge, false, ""), HasSubstr("densities on"));
}

TEST(Method, TellsZeroStrayLightAndLimitWhereTheyAreKnown) {
  const auto whole = method_after([](ScanMeasurement&) {});
  EXPECT_THAT(whole, Contains("Density zero was read in the perforations; over the film the bare "
                              "light differs by 0.02 in density."));
  EXPECT_THAT(whole, Contains(StartsWith("Stray light is 0.8 ± 0.3 % of the bare light")));
  EXPECT_THAT(whole, Contains(StartsWith("Up to a density of 2.4 this scan")));
  const auto bare = method_after([](ScanMeasurement& scan) {
    scan.zero = {};
    scan.veiling_glare = Unknown::nothing_opaque;
    scan.density_limit = Unknown::no_densities;
  });
  ASSERT_EQ(bare.size(), 3U);
  EXPECT_THAT(bare.back(), StartsWith("Density zero was read nowhere"));
}

}  // namespace
}  // namespace fogline
