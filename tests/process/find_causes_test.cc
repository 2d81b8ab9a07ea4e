#include "process/invented_reading.h"
#include "tables/shipped_knowledge.h"

#include <fogline/process/find_causes.h>

#include <algorithm>
#include <set>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using invented::RollNumbers;
using testing::HasSubstr;

std::vector<Finding> causes(const RollMeasurement& roll,
                            const RollPopulation& population = shipped_knowledge().population) {
  const Aim aim = invented::usual_aim();
  const LightOrTime weighed = weigh_light_and_time(roll, aim, population, nullptr);
  return find_causes(roll, weighed, aim, population, nullptr);
}

const Finding* find(const std::vector<Finding>& findings, const std::string& code) {
  const auto found = std::find_if(findings.begin(), findings.end(),
                                  [&](const Finding& finding) { return finding.code == code; });
  return found == findings.end() ? nullptr : &*found;
}

double confidence(const std::vector<Finding>& findings, const std::string& code) {
  const Finding* finding = find(findings, code);
  return finding == nullptr ? 0.0 : finding->confidence;
}

RollNumbers without_pictures() {
  RollNumbers numbers;
  numbers.frames = 0;
  return numbers;
}

TEST(FindCauses, MostProbableFirstAndSumsToOneAtMost) {
  const std::set<std::string> exclusive{"normal",          "under-exposed",  "over-exposed",
                                        "under-developed", "over-developed", "weak-developer"};
  for (const double highlight : {0.5, 0.8, 1.0, 1.2, 1.5}) {
    RollNumbers numbers;
    numbers.highlight = highlight;
    numbers.leader = 1.5;
    const std::vector<Finding> findings = causes(invented::roll_of(numbers));
    double sum = 0.0;
    for (std::size_t i = 0; i < findings.size(); ++i) {
      sum += exclusive.count(findings[i].code) != 0 ? findings[i].confidence : 0.0;
      if (i > 0) {
        EXPECT_LE(findings[i].confidence, findings[i - 1].confidence);
      }
    }
    EXPECT_LE(sum, 1.0 + 1e-9);
    EXPECT_GT(sum, 0.6);
  }
}

TEST(FindCauses, NamesExposureBesideDevelopment) {
  // "Soot and chalk" (common practice, no source): empty shadows, normal highlights, strong print.
  RollNumbers numbers;
  numbers.shadow = 0.0;
  numbers.highlight = 1.20;
  numbers.edge_print = 1.4;
  const std::vector<Finding> findings =
      causes(invented::roll_of(numbers), invented::with_logged_print(1.0));
  ASSERT_FALSE(findings.empty());
  EXPECT_THAT(findings[0].message, HasSubstr("Light was short"));
  EXPECT_THAT(findings[0].message, HasSubstr("Development was long"));
}

TEST(FindCauses, SaysThatItCannotTell) {
  RollNumbers numbers;
  numbers.shadow = 0.15;
  numbers.highlight = 0.95;
  numbers.frames = 2;
  const std::vector<Finding> findings = causes(invented::roll_of(numbers));
  ASSERT_FALSE(findings.empty());
  ASSERT_LT(findings[0].confidence, 0.5);
  EXPECT_THAT(findings[0].message, HasSubstr("Can't tell"));
}

TEST(FindCauses, NothingIsCalledBad) {
  for (const double highlight : {0.3, 1.2, 2.0}) {
    RollNumbers numbers;
    numbers.highlight = highlight;
    for (const Finding& finding : causes(invented::roll_of(numbers))) {
      EXPECT_THAT(finding.message, testing::Not(HasSubstr("bad")));
      EXPECT_FALSE(finding.evidence.empty());
    }
  }
}

// Numbers and black leader, no pictures: never exposed. Nothing at all: never developed (common
// practice, no source).
TEST(FindCauses, PrintWithoutPicturesIsNotExposed) {
  RollNumbers numbers = without_pictures();
  numbers.edge_print = 1.0;
  const std::vector<Finding> findings = causes(invented::roll_of(numbers));
  EXPECT_GT(confidence(findings, "not-exposed"), 0.8);
  EXPECT_LT(confidence(findings, "not-developed"), 0.1);
}

TEST(FindCauses, ClearFilmIsNotDeveloped) {
  const std::vector<Finding> findings = causes(invented::roll_of(without_pictures()));
  EXPECT_GT(confidence(findings, "not-developed"), 0.8);
  EXPECT_LT(confidence(findings, "not-exposed"), 0.2);
}

TEST(FindCauses, ClearFilmWithoutPrintOfItsOwnStaysOpen) {
  RollNumbers numbers = without_pictures();
  numbers.format = FilmFormat::f120;
  const std::vector<Finding> findings = causes(invented::roll_of(numbers));
  EXPECT_NEAR(confidence(findings, "not-exposed"), confidence(findings, "not-developed"), 0.1);
  EXPECT_LT(confidence(findings, "not-developed"), 0.6);
}

TEST(FindCauses, PicturesAreExposedAndDeveloped) {
  const std::vector<Finding> findings = causes(invented::roll_of({}));
  EXPECT_EQ(find(findings, "not-exposed"), nullptr);
  EXPECT_EQ(find(findings, "not-developed"), nullptr);
  EXPECT_EQ(find(findings, "fogged"), nullptr);
}

// Base plus fog 0.20 to 0.35 on 135 film, fogged from 0.15 above it (common practice, no source).
TEST(FindCauses, DenseClearFilmIsFogged) {
  RollNumbers numbers;
  numbers.base_fog = 0.70;
  EXPECT_GT(confidence(causes(invented::roll_of(numbers)), "fogged"), 0.9);
  numbers.base_fog = 0.33;
  EXPECT_LT(confidence(causes(invented::roll_of(numbers)), "fogged"), 0.2);
}

TEST(FindCauses, GreyOnClearBaseIsMoreThanOnGrey) {
  RollNumbers numbers;
  numbers.base_fog = 0.36;
  const double on_135 = confidence(causes(invented::roll_of(numbers)), "fogged");
  numbers.format = FilmFormat::f120;
  const double on_120 = confidence(causes(invented::roll_of(numbers)), "fogged");
  EXPECT_GT(on_120, 0.8);
  EXPECT_LT(on_135, 0.5);
}

TEST(FindCauses, ColouredVeilIsNoFog) {
  RollMeasurement roll = invented::roll_of({});
  roll.scans[0].base_fog->visual.value = 0.50;
  const double neutral = confidence(causes(roll), "fogged");
  roll.scans[0].base_fog->channels = {
      {invented::read_as(0.30), invented::read_as(0.60), invented::read_as(0.40)}};
  EXPECT_LT(confidence(causes(roll), "fogged"), neutral);
}

TEST(FindCauses, GreyLeaderPointsToTheDeveloper) {
  RollNumbers numbers;
  numbers.shadow = 0.20;
  numbers.highlight = 0.70;
  numbers.leader = 1.3;
  EXPECT_GT(confidence(causes(invented::roll_of(numbers)), "weak-developer"), 0.1);
  numbers.leader = 2.3;
  EXPECT_LT(confidence(causes(invented::roll_of(numbers)), "weak-developer"), 0.1);
}

TEST(FindCauses, TintsBecomeCauses) {
  RollMeasurement roll = invented::roll_of({});
  const auto add = [&](TintKind kind, double sure) {
    roll.scans[0].tint.components.push_back({kind, invented::read_as(0.08), sure});
  };
  add(TintKind::dye_left, 0.9);
  add(TintKind::fixer_haze, 0.4);
  add(TintKind::yellow_stain, 0.6);
  const std::vector<Finding> findings = causes(roll);
  EXPECT_DOUBLE_EQ(confidence(findings, "dye-left"), 0.9);
  EXPECT_DOUBLE_EQ(confidence(findings, "fixing-incomplete"), 0.4);
  EXPECT_DOUBLE_EQ(confidence(findings, "stained"), 0.6);
  EXPECT_THAT(find(findings, "dye-left")->message, HasSubstr("the stock's own"));
  roll.scans[0].tint.may_be_stock = false;
  EXPECT_THAT(find(causes(roll), "dye-left")->message, testing::Not(HasSubstr("the stock's own")));
}

TEST(FindCauses, MarksBecomeCauses) {
  RollMeasurement roll = invented::roll_of({});
  const auto add = [&](MarkKind kind, double sure) {
    Mark mark;
    mark.kind = kind;
    mark.confidence = sure;
    roll.scans[0].marks.push_back(mark);
  };
  add(MarkKind::drying_mark, 0.5);
  add(MarkKind::drying_mark, 0.5);
  add(MarkKind::air_bell, 0.1);
  add(MarkKind::surge, 0.8);
  add(MarkKind::dust, 0.9);
  const std::vector<Finding> findings = causes(roll);
  // At least one of two even chances.
  EXPECT_NEAR(confidence(findings, "drying-marks"), 0.75, 1e-9);
  EXPECT_NEAR(confidence(findings, "uneven-development"), 0.8, 1e-9);
  EXPECT_EQ(find(findings, "air-bells"), nullptr);
  EXPECT_EQ(find(findings, "dirty"), nullptr) << "every film has some dust";
  for (int i = 0; i < 20; ++i) {
    add(MarkKind::dust, 0.9);
  }
  EXPECT_GT(confidence(causes(roll), "dirty"), 0.9);
}

TEST(FindCauses, UnfitScansAreSaid) {
  RollMeasurement roll = invented::roll_of({});
  roll.scans[0].fitness = Fitness::unfit;
  const std::vector<Finding> findings = causes(roll);
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].code, "unfit-scan");
}

}  // namespace
}  // namespace fogline
