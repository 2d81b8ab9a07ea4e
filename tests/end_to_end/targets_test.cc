// Brackets and printed wedges, simulated with all that a scanner does to them, give the curve of
// the film that they were made on.
#include "base/within_doubt.h"
#include "measure_file.h"
#include "measured_target.h"
#include "simulator/film_curve.h"
#include "simulator/scenario_sampling.h"
#include "tables/shipped_knowledge.h"

#include <fogline/base/refusal.h>

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace end_to_end {
namespace {

using filmsim::TargetKind;
using filmsim::TargetWish;

/// As a densitometer has it.
double contrast_index_of(const filmsim::TargetScan& scan) {
  const filmsim::TargetCurve curve(scan);
  const double speed_point = curve.speed_point_log_h();
  return filmsim::two_arc_contrast([&](double log_h) { return curve.net_density(log_h); },
                                   speed_point - 3.0, speed_point + 1.0)
      .contrast_index;
}

struct Measured {
  filmsim::TargetScan scan;
  fogline::RollMeasurement roll;
};

Measured measure(const TargetWish& wish, std::uint64_t seed,
                 const std::optional<fogline::ExposureTarget>& other = {}) {
  const TemporaryFolder folder;
  const filmsim::TargetScan scan = filmsim::sample_target(wish, seed);
  return {scan,
          measure_target(scan, filmsim::render(scan.scenario), other ? *other : target_of(scan),
                         wish.calibratable, folder.file("scan"))};
}

void expect_covers(const std::optional<fogline::Quantity>& read, double truth, double greatest_u95,
                   const std::string& name) {
  ASSERT_TRUE(read) << name;
  SCOPED_TRACE(name);
  fogline::test::expect_within_doubt(*read, truth, greatest_u95);
}

class EveryTarget : public testing::TestWithParam<TargetKind> {};

TEST_P(EveryTarget, GivesTheFilmsCurve) {
  for (const std::uint64_t seed : {1U, 8U}) {
    const Measured measured = measure({GetParam(), 0.0, true, true}, seed);
    ASSERT_TRUE(measured.roll.sensitometry)
        << fogline::fact_row(measured.roll.sensitometry.why().kind).code;
    const fogline::Sensitometry& read = *measured.roll.sensitometry;
    const double contrast_index = contrast_index_of(measured.scan);
    // Much stray light alone leaves 0.18 of it in doubt.
    expect_covers(read.readings.contrast_index.optional(), contrast_index, 0.2 * contrast_index,
                  "contrast index");
    expect_covers(read.readings.speed_point_log_h.optional(),
                  filmsim::TargetCurve(measured.scan).speed_point_log_h(), 0.15, "speed point");
    EXPECT_EQ(measured.roll.contrast.method, GetParam() == TargetKind::kBracket
                                                 ? fogline::ContrastMethod::bracket
                                                 : fogline::ContrastMethod::wedge);
    EXPECT_TRUE(measured.roll.target_cautions.empty());
    const std::size_t made = std::max(measured.scan.stops.size(), measured.scan.printed.size());
    EXPECT_EQ(measured.roll.scans.front().steps.size(), made);
    const auto& outlines = measured.roll.scans.front().outlines;
    EXPECT_EQ(std::count_if(outlines.begin(), outlines.end(),
                            [](const fogline::Outline& outline) {
                              return outline.kind == fogline::OutlineKind::exposed_step;
                            }),
              static_cast<std::ptrdiff_t>(made));
    for (const fogline::StepMeasurement& step : measured.roll.scans.front().steps) {
      EXPECT_TRUE(step.log_h);
      EXPECT_GT(step.box_px.width, 4.0);
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Kinds, EveryTarget,
                         testing::Values(TargetKind::kBracket, TargetKind::kWedgeAlong,
                                         TargetKind::kWedgeAcross));

TEST(RoughTarget, WidensItsDoubt) {
  const Measured fine = measure({TargetKind::kBracket, 0.0, true, true}, 5);
  const Measured rough = measure({TargetKind::kBracket, 0.2, false, true}, 5);
  ASSERT_TRUE(fine.roll.sensitometry && rough.roll.sensitometry);
  const auto& index = rough.roll.sensitometry->readings.contrast_index;
  expect_covers(index.optional(), contrast_index_of(rough.scan), 0.25, "rough");
  EXPECT_GT(index->u95, 2.0 * fine.roll.sensitometry->readings.contrast_index->u95);
}

TEST(MarkedAreas, MakeACurveToo) {
  // The frames of a bracket, marked by hand.
  const filmsim::TargetScan scan =
      filmsim::sample_target({TargetKind::kBracket, 0.0, true, true}, 4);
  const filmsim::Simulated drawn = filmsim::render(scan.scenario);
  fogline::ExposureTarget target;
  target.area_doubt_stops = 0.02;
  for (const filmsim::FrameTruth& frame : drawn.truth.frames) {
    const filmsim::Box& box = frame.box_px;
    target.areas.push_back(
        {{box.x + 0.3 * box.width, box.y + 0.3 * box.height, 0.4 * box.width, 0.4 * box.height},
         frame.plan->exposure_error_stops});
  }
  const Measured measured = measure({TargetKind::kBracket, 0.0, true, true}, 4, target);
  ASSERT_TRUE(measured.roll.sensitometry)
      << fogline::fact_row(measured.roll.sensitometry.why().kind).code;
  EXPECT_EQ(measured.roll.contrast.method, fogline::ContrastMethod::marked_areas);
  expect_covers(measured.roll.sensitometry->readings.contrast_index.optional(),
                contrast_index_of(scan), 0.15, "marked areas");
}

TEST(MarkedAreas, MustLieOnFilm) {
  fogline::ExposureTarget target;
  target.areas.push_back({{1.0, 1.0, 5.0, 5.0}, 0.0});
  try {
    measure({TargetKind::kBracket, 0.0, true, true}, 4, target);
    FAIL() << "nothing was said";
  } catch (const fogline::FileError& error) {
    EXPECT_EQ(error.why().kind, fogline::Refusal::area_off_film);
  }
}

TEST(MeteredTones, MakeACurveWithTheirDoubt) {
  // An ordinary roll whose photographer noted zones of the darkest, middle and brightest parts.
  const filmsim::Scenario scenario = filmsim::sample_scenario("flatbed-135-open", 4);
  const filmsim::CurveSettings& film = scenario.strips.front().stock.curve;
  // Without stain the silver's curve is the visual one.
  ASSERT_EQ(scenario.strips.front().stock.image_stain, filmsim::Rgb{});
  const filmsim::FilmCurve curve(film);
  const TemporaryFolder folder;
  const filmsim::Simulated drawn = filmsim::render(scenario);
  const double base = drawn.truth.strips.front().base_fog.visual;
  // Ten times over the speed point (ISO 6:1993): where a meter set to the film's speed puts Zone V.
  const double metered_log_h = film.speed_point_log_h + 1.0;
  fogline::ExposureTarget target;
  for (const filmsim::FrameTruth& frame : drawn.truth.frames) {
    const auto note = [&](fogline::TonePart part, const std::optional<double>& density) {
      const double net = density ? *density - base : 0.0;
      if (net > 0.05 && net < 0.9 * film.maximum_density) {
        const double stops = (curve.log_h_of(net) - metered_log_h) / std::log10(2.0);
        target.metered.push_back({frame.number, part, 5.0 + stops, 0.2});
      }
    };
    note(fogline::TonePart::shadow, frame.shadow);
    note(fogline::TonePart::middle, frame.middle);
    note(fogline::TonePart::highlight, frame.highlight);
  }
  ASSERT_GE(target.metered.size(), 8U);
  fogline::MeasureOptions options = fogline::shipped_options();
  options.target = target;
  const auto source = fogline::open_scan(write_scan(drawn, folder.file("scan.tif")), {});
  const fogline::RollMeasurement roll = fogline::measure_roll(*source, options).measurement;
  ASSERT_TRUE(roll.sensitometry) << fogline::fact_row(roll.sensitometry.why().kind).code;
  const fogline::CurveReadings& read = roll.sensitometry->readings;
  expect_covers(read.gradient_130.optional(),
                (curve.density(film.speed_point_log_h + 1.3) - 0.10) / 1.3, 0.4,
                "gradient over 1.30");
  expect_covers(read.speed_point_log_h.optional(), -1.0, 0.4, "speed point");
  // A fifth of a stop each: no densitometer's doubt.
  EXPECT_GT(read.gradient_130->u95, 0.01);
}

TEST(MeteredTones, OfAFrameThatIsNotThereAreSaid) {
  fogline::ExposureTarget target;
  target.metered.push_back({99, fogline::TonePart::shadow, 3.0, 0.3});
  const Measured measured = measure({TargetKind::kBracket, 0.0, true, true}, 3, target);
  EXPECT_FALSE(measured.roll.sensitometry);
  ASSERT_FALSE(measured.roll.target_cautions.empty());
  EXPECT_EQ(measured.roll.target_cautions.front().fact.kind,
            fogline::CautionKind::metered_frame_missing);
}

TEST(AmbiguousTarget, TellsNoSpeed) {
  // Of a ramp of frames only a part is told: it may begin with any of them.
  const filmsim::TargetScan scan =
      filmsim::sample_target({TargetKind::kBracket, 0.0, true, true}, 3);
  ASSERT_GT(scan.stops.size(), 8U);
  fogline::ExposureTarget target;
  target.exposure_index = 400.0;
  target.bracket =
      fogline::BracketTarget{{-3.0, -2.0, -1.0, 0.0, 1.0, 2.0}, std::vector<double>(6, 0.05), {}};
  const Measured measured = measure({TargetKind::kBracket, 0.0, true, true}, 3, target);
  ASSERT_TRUE(measured.roll.sensitometry);
  ASSERT_FALSE(measured.roll.target_cautions.empty());
  EXPECT_EQ(measured.roll.target_cautions.front().fact.kind,
            fogline::CautionKind::bracket_ambiguous);
  const fogline::Sensitometry& read = *measured.roll.sensitometry;
  EXPECT_FALSE(read.readings.speed_point_log_h);
  EXPECT_FALSE(read.placement.exposure_index);
  EXPECT_EQ(read.placement.exposure_index.why(), read.readings.speed_point_log_h.why());
}

TEST(WrongTarget, IsSaidInASentence) {
  // A bracket's card on a roll whose frames don't rise like that.
  fogline::ExposureTarget target;
  target.bracket =
      fogline::BracketTarget{{0.0, 2.0, -2.0, 1.0, -1.0, 3.0}, std::vector<double>(6, 0.05), {}};
  const Measured measured = measure({TargetKind::kBracket, 0.0, true, true}, 3, target);
  EXPECT_FALSE(measured.roll.sensitometry);
  ASSERT_FALSE(measured.roll.target_cautions.empty());
  EXPECT_EQ(measured.roll.target_cautions.back().fact.kind, fogline::CautionKind::target_unread);
}

}  // namespace
}  // namespace end_to_end
