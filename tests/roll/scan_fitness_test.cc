// What a scan is fit for, from invented readings.

#include "roll/reading/scan_fitness.h"

#include "tables/shipped_knowledge.h"

#include <algorithm>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// A scan in colour of 16 bits whose curve is told, one strip of 135 film with clear film and bare
/// light in sight.
struct Evidence {
  ScanInfo info;
  FilmLayout layout;
  std::vector<StripReading> readings{StripReading(shipped_knowledge().scan.devices)};
  ZeroReport zero{ZeroSource::perforations, 0.01};
  Known<Quantity> glare = Quantity{0.01, 0.002, {}, {}, {}, false};
  Known<ScanCalibration> calibration = Unknown::not_calibrated;
  double clipped_share = 0.0;
  bool wedge_alone = false;

  Evidence() {
    info.bits = 16;
    info.channels = 3;
    info.transfer.source = TransferSource::icc_profile;
    layout.polarity = Polarity::negative;
    layout.strips.resize(1);
    layout.strips[0].perforations.resize(16);
    layout.strips[0].frames.resize(2);
    readings[0].zero = ZeroSource::perforations;
    readings[0].clear = ClearFilm{};
  }

  [[nodiscard]] FitnessJudgement judged() const {
    return judge_fitness({info, layout, readings, zero, glare, calibration,
                          shipped_knowledge().scan.devices, shipped_knowledge().scan.films,
                          clipped_share, wedge_alone});
  }
};

std::vector<CautionKind> kinds_of(const FitnessJudgement& judged) {
  std::vector<CautionKind> kinds;
  for (const Caution& caution : judged.cautions) {
    kinds.push_back(caution.fact.kind);
  }
  return kinds;
}

void expect_refused(const Evidence& evidence, CautionKind kind) {
  const FitnessJudgement judged = evidence.judged();
  EXPECT_EQ(judged.fitness, Fitness::unfit);
  EXPECT_FALSE(judged.tells_densities());
  EXPECT_EQ(kinds_of(judged), std::vector<CautionKind>{kind});
  EXPECT_EQ(judged.cautions.front().severity, Severity::unfit);
}

TEST(JudgeFitness, AFaultlessScanIsComparableWithoutCautions) {
  const FitnessJudgement judged = Evidence().judged();
  EXPECT_EQ(judged.fitness, Fitness::comparable);
  EXPECT_EQ(judged.densities_above, DensitiesAbove::light_path);
  EXPECT_TRUE(judged.cautions.empty());
}

TEST(JudgeFitness, RefusesWithTheFirstReasonAlone) {
  Evidence evidence;
  evidence.layout.polarity = Polarity::inverted;
  expect_refused(evidence, CautionKind::inverted);
  evidence = {};
  evidence.readings[0].clear_clipped = 0.6;
  expect_refused(evidence, CautionKind::base_clipped);
  evidence = {};
  evidence.readings[0].clear.reset();
  expect_refused(evidence, CautionKind::no_clear_film);
  evidence.layout.strips[0].perforations.clear();
  evidence.clipped_share = 0.2;
  expect_refused(evidence, CautionKind::base_clipped);
  evidence.clipped_share = 0.0;
  evidence.layout.strips[0].frames.clear();
  evidence.layout.strips[0].surround = Surround::bare_light;
  expect_refused(evidence, CautionKind::no_frames);
  evidence.layout.strips.clear();
  expect_refused(evidence, CautionKind::no_film);
}

// A picture without any edge of film in it is no piece of film.
TEST(JudgeFitness, WhatFillsThePictureIsNoFilm) {
  Evidence evidence;
  evidence.readings[0].clear.reset();
  evidence.layout.strips[0].perforations.clear();
  evidence.layout.strips[0].frames.clear();
  evidence.layout.strips[0].surround = Surround::image_border;
  expect_refused(evidence, CautionKind::no_film);
}

TEST(JudgeFitness, AWedgeAloneIsNamed) {
  Evidence evidence;
  evidence.layout.strips.clear();
  evidence.readings.clear();
  evidence.wedge_alone = true;
  expect_refused(evidence, CautionKind::wedge_alone);
}

// No film is clearer than no film: such a reading is never told as a density.
TEST(JudgeFitness, ClearFilmBrighterThanBareLightIsRefused) {
  Evidence evidence;
  for (const double impossible : {-0.2, -1.0, -5.963}) {
    evidence.readings[0].clear->visual = impossible;
    expect_refused(evidence, CautionKind::below_light_path);
  }
  evidence.readings[0].clear->visual = -0.005;
  EXPECT_EQ(evidence.judged().fitness, Fitness::comparable);
}

// With the camera's record or without it, as PNG or JPEG: what the pixels show decides.
TEST(JudgeFitness, AFinishedPictureIsToldByItsPixels) {
  Evidence evidence;
  evidence.info.bits = 8;
  evidence.info.transfer = {TransferKind::srgb, {}, TransferSource::assumed};
  evidence.readings[0].clear->visual = 0.29;
  const auto finished = [&] {
    const std::vector<CautionKind> kinds = kinds_of(evidence.judged());
    return std::find(kinds.begin(), kinds.end(), CautionKind::camera_display_curve) != kinds.end();
  };
  EXPECT_FALSE(finished());
  evidence.info.camera = true;
  EXPECT_TRUE(finished());
  evidence.info.camera = false;
  evidence.readings[0].clear->visual = 0.09;
  EXPECT_TRUE(finished());
  evidence.info.bits = 16;
  EXPECT_FALSE(finished());
  // A profile tells how to show a picture, not what was done to it; a linear one wasn't finished.
  evidence.info.transfer.source = TransferSource::icc_profile;
  EXPECT_FALSE(finished());
  EXPECT_EQ(evidence.judged().fitness, Fitness::comparable);
  evidence.info.camera = true;
  EXPECT_TRUE(finished());
  EXPECT_EQ(evidence.judged().fitness, Fitness::indicative);
  evidence.info.transfer.kind = TransferKind::linear;
  EXPECT_FALSE(finished());
  evidence.info.transfer = {TransferKind::srgb, {}, TransferSource::option};
  EXPECT_FALSE(finished());
}

// One colour at the top is said; the others carry the densities.
TEST(JudgeFitness, ALostChannelIsSaid) {
  Evidence evidence;
  evidence.readings[0].colours = false;
  EXPECT_EQ(kinds_of(evidence.judged()), std::vector<CautionKind>{CautionKind::channel_clipped});
  EXPECT_EQ(evidence.judged().fitness, Fitness::comparable);
}

TEST(JudgeFitness, AnUnknownCurveLeavesMarks) {
  Evidence evidence;
  evidence.info.transfer_known = false;
  const FitnessJudgement judged = evidence.judged();
  EXPECT_EQ(judged.fitness, Fitness::marks_only);
  EXPECT_EQ(kinds_of(judged), std::vector<CautionKind>{CautionKind::transfer_unknown});
}

TEST(JudgeFitness, ACalibrationOfTheSameSettingsMeasures) {
  Evidence evidence;
  ScanCalibration calibration;
  evidence.calibration = calibration;
  EXPECT_EQ(evidence.judged().fitness, Fitness::measured);
  calibration.same_settings = false;
  evidence.calibration = calibration;
  EXPECT_EQ(evidence.judged().fitness, Fitness::comparable);
  calibration.shape_only = true;
  evidence.calibration = calibration;
  EXPECT_EQ(evidence.judged().fitness, Fitness::indicative);
}

TEST(JudgeFitness, WithoutBareLightDensitiesAreRelative) {
  Evidence evidence;
  evidence.readings[0].zero = ZeroSource::none;
  const FitnessJudgement hidden = evidence.judged();
  EXPECT_EQ(hidden.fitness, Fitness::relative);
  EXPECT_EQ(hidden.densities_above, DensitiesAbove::base);
  EXPECT_EQ(kinds_of(hidden), std::vector<CautionKind>{CautionKind::bare_light_hidden});
  evidence.readings[0].zero_samples.resize(3);
  EXPECT_EQ(kinds_of(evidence.judged()), std::vector<CautionKind>{CautionKind::bare_light_clipped});
}

TEST(JudgeFitness, TellsEachDoubtOfTheScan) {
  const auto told = [](const auto& change) {
    Evidence evidence;
    change(evidence);
    const FitnessJudgement judged = evidence.judged();
    const std::vector<CautionKind> kinds = kinds_of(judged);
    EXPECT_EQ(kinds.size(), 1U);
    return std::pair(judged.fitness, kinds.empty() ? CautionKind::no_film : kinds.front());
  };
  EXPECT_EQ(told([](Evidence& e) { e.info.bits = 8; }),
            std::pair(Fitness::indicative, CautionKind::eight_bit));
  EXPECT_EQ(told([](Evidence& e) { e.info.channels = 1; }),
            std::pair(Fitness::comparable, CautionKind::grey_scan));
  EXPECT_EQ(told([](Evidence& e) { e.readings[0].zero_clipped = 0.02; }),
            std::pair(Fitness::indicative, CautionKind::bare_light_partly_clipped));
  EXPECT_EQ(told([](Evidence& e) { e.zero.unevenness_density = 0.08; }),
            std::pair(Fitness::comparable, CautionKind::uneven_light));
  EXPECT_EQ(told([](Evidence& e) { e.glare->value = 0.05; }),
            std::pair(Fitness::comparable, CautionKind::glare_strong));
  EXPECT_EQ(told([](Evidence& e) { e.glare = Unknown::nothing_opaque; }),
            std::pair(Fitness::comparable, CautionKind::glare_unknown));
  EXPECT_EQ(told([](Evidence& e) {
              e.info.tag_pixels_per_mm = 20.0;
              e.layout.pixels_per_mm = 10.0;
            }),
            std::pair(Fitness::comparable, CautionKind::resolution_tag_wrong));
}

}  // namespace
}  // namespace fogline
