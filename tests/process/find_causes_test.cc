#include "process/causes/find_causes.h"

#include "process/belief/weigh_light_and_time.h"
#include "process/invented_reading.h"
#include "tables/shipped_knowledge.h"

#include <algorithm>
#include <set>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using invented::RollNumbers;
using testing::ElementsAre;

std::vector<Finding> causes(const RollMeasurement& roll,
                            const RollPopulation& population = shipped_knowledge().population) {
  const Aim aim = invented::usual_aim();
  const LightOrTime weighed = weigh_light_and_time(roll, aim, population, nullptr);
  return find_causes(roll, weighed, aim, population, nullptr);
}

const Finding* find(const std::vector<Finding>& findings, Cause cause) {
  const auto found = std::find_if(findings.begin(), findings.end(),
                                  [&](const Finding& finding) { return finding.cause == cause; });
  return found == findings.end() ? nullptr : &*found;
}

double confidence(const std::vector<Finding>& findings, Cause cause) {
  const Finding* finding = find(findings, cause);
  return finding == nullptr ? 0.0 : finding->confidence;
}

std::vector<CauseStatement> stated(const Finding& finding) {
  std::vector<CauseStatement> kinds;
  for (const Fact<CauseStatement>& statement : finding.statements) {
    kinds.push_back(statement.kind);
  }
  return kinds;
}

RollNumbers without_pictures() {
  RollNumbers numbers;
  numbers.frames = 0;
  return numbers;
}

TEST(FindCauses, MostProbableFirstAndSumsToOneAtMost) {
  const std::set<Cause> exclusive{Cause::normal,         Cause::under_exposed,
                                  Cause::over_exposed,   Cause::under_developed,
                                  Cause::over_developed, Cause::weak_developer};
  for (const double highlight : {0.5, 0.8, 1.0, 1.2, 1.5}) {
    RollNumbers numbers;
    numbers.highlight = highlight;
    numbers.leader = 1.5;
    const std::vector<Finding> findings = causes(invented::roll_of(numbers));
    double sum = 0.0;
    for (std::size_t i = 0; i < findings.size(); ++i) {
      sum += exclusive.count(findings[i].cause) != 0 ? findings[i].confidence : 0.0;
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
  ASSERT_EQ(findings[0].cause, Cause::under_exposed);
  EXPECT_THAT(stated(findings[0]),
              ElementsAre(CauseStatement::light_short, CauseStatement::development_long));
  EXPECT_GT(findings[0].statements[0].numbers[0], 0.667);
  EXPECT_GT(findings[0].statements[1].numbers[0], 0.58);
}

TEST(FindCauses, SaysThatItCannotTell) {
  RollNumbers numbers;
  numbers.shadow = 0.15;
  numbers.highlight = 0.95;
  numbers.frames = 2;
  const std::vector<Finding> findings = causes(invented::roll_of(numbers));
  ASSERT_FALSE(findings.empty());
  ASSERT_LT(findings[0].confidence, 0.5);
  EXPECT_EQ(findings[0].statements[0].numbers, std::vector{findings[0].confidence});
  EXPECT_TRUE(findings[0].would_tell_most);
}

TEST(FindCauses, EveryFindingHasItsEvidence) {
  for (const double highlight : {0.3, 1.2, 2.0}) {
    RollNumbers numbers;
    numbers.highlight = highlight;
    for (const Finding& finding : causes(invented::roll_of(numbers))) {
      EXPECT_FALSE(finding.statements.empty());
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
  EXPECT_GT(confidence(findings, Cause::not_exposed), 0.8);
  EXPECT_LT(confidence(findings, Cause::not_developed), 0.1);
}

TEST(FindCauses, ClearFilmIsNotDeveloped) {
  const std::vector<Finding> findings = causes(invented::roll_of(without_pictures()));
  EXPECT_GT(confidence(findings, Cause::not_developed), 0.8);
  EXPECT_LT(confidence(findings, Cause::not_exposed), 0.2);
}

TEST(FindCauses, ClearFilmWithoutPrintOfItsOwnStaysOpen) {
  RollNumbers numbers = without_pictures();
  numbers.format = FilmFormat::f120;
  const std::vector<Finding> findings = causes(invented::roll_of(numbers));
  EXPECT_NEAR(confidence(findings, Cause::not_exposed), confidence(findings, Cause::not_developed),
              0.1);
  EXPECT_LT(confidence(findings, Cause::not_developed), 0.6);
}

TEST(FindCauses, PicturesAreExposedAndDeveloped) {
  const std::vector<Finding> findings = causes(invented::roll_of({}));
  EXPECT_EQ(find(findings, Cause::not_exposed), nullptr);
  EXPECT_EQ(find(findings, Cause::not_developed), nullptr);
  EXPECT_EQ(find(findings, Cause::fogged), nullptr);
}

// Base plus fog 0.20 to 0.35 on 135 film, fogged from 0.15 above it (common practice, no source).
TEST(FindCauses, DenseClearFilmIsFogged) {
  RollNumbers numbers;
  numbers.base_fog = 0.70;
  EXPECT_GT(confidence(causes(invented::roll_of(numbers)), Cause::fogged), 0.9);
  numbers.base_fog = 0.33;
  EXPECT_LT(confidence(causes(invented::roll_of(numbers)), Cause::fogged), 0.2);
}

// In a grey scan the mask of colour film reads like fog, unless the card names the film.
TEST(FindCauses, AGreyScanMayShowColourFilmsMask) {
  RollNumbers numbers;
  numbers.base_fog = 0.55;
  RollMeasurement roll = invented::roll_of(numbers);
  roll.scans[0].info.channels = 3;
  const std::vector<Finding> in_colour = causes(roll);
  roll.scans[0].info.channels = 1;
  const std::vector<Finding> in_grey = causes(roll);
  ASSERT_NE(find(in_grey, Cause::fogged), nullptr);
  EXPECT_LT(confidence(in_grey, Cause::fogged), confidence(in_colour, Cause::fogged) - 0.1);
  const auto names_mask = [](const Finding& finding) {
    return std::any_of(
        finding.evidence.begin(), finding.evidence.end(),
        [](const Fact<Evidence>& fact) { return fact.kind == Evidence::grey_scan_of_mask; });
  };
  EXPECT_TRUE(names_mask(*find(in_grey, Cause::fogged)));
  EXPECT_FALSE(names_mask(*find(in_colour, Cause::fogged)));
  RollCard card;
  card.film_type = FilmType::cubic;
  const Aim aim = invented::usual_aim();
  const RollPopulation& population = shipped_knowledge().population;
  const LightOrTime weighed = weigh_light_and_time(roll, aim, population, &card);
  EXPECT_EQ(confidence(find_causes(roll, weighed, aim, population, &card), Cause::fogged),
            confidence(in_colour, Cause::fogged));
}

TEST(FindCauses, GreyOnClearBaseIsMoreThanOnGrey) {
  RollNumbers numbers;
  numbers.base_fog = 0.36;
  const double on_135 = confidence(causes(invented::roll_of(numbers)), Cause::fogged);
  numbers.format = FilmFormat::f120;
  const double on_120 = confidence(causes(invented::roll_of(numbers)), Cause::fogged);
  EXPECT_GT(on_120, 0.8);
  EXPECT_LT(on_135, 0.5);
}

TEST(FindCauses, ColouredVeilIsNoFog) {
  RollMeasurement roll = invented::roll_of({});
  roll.scans[0].base_fog->visual.value = 0.50;
  const double neutral = confidence(causes(roll), Cause::fogged);
  roll.scans[0].base_fog->channels = {
      {invented::read_as(0.30), invented::read_as(0.60), invented::read_as(0.40)}};
  EXPECT_LT(confidence(causes(roll), Cause::fogged), neutral);
}

TEST(FindCauses, GreyLeaderPointsToTheDeveloper) {
  RollNumbers numbers;
  numbers.shadow = 0.20;
  numbers.highlight = 0.70;
  numbers.leader = 1.3;
  EXPECT_GT(confidence(causes(invented::roll_of(numbers)), Cause::weak_developer), 0.1);
  numbers.leader = 2.3;
  EXPECT_LT(confidence(causes(invented::roll_of(numbers)), Cause::weak_developer), 0.1);
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
  EXPECT_DOUBLE_EQ(confidence(findings, Cause::dye_left), 0.9);
  EXPECT_DOUBLE_EQ(confidence(findings, Cause::fixing_incomplete), 0.4);
  EXPECT_DOUBLE_EQ(confidence(findings, Cause::stained), 0.6);
  EXPECT_THAT(stated(*find(findings, Cause::dye_left)),
              ElementsAre(CauseStatement::dye_left, CauseStatement::perhaps_stocks_own));
  roll.scans[0].tint.may_be_stock = false;
  EXPECT_THAT(stated(*find(causes(roll), Cause::dye_left)), ElementsAre(CauseStatement::dye_left));
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
  EXPECT_NEAR(confidence(findings, Cause::drying_marks), 0.75, 1e-9);
  EXPECT_NEAR(confidence(findings, Cause::uneven_development), 0.8, 1e-9);
  EXPECT_EQ(find(findings, Cause::drying_marks)->evidence,
            std::vector{fact_of(Evidence::drying_marks, {2.0})});
  EXPECT_EQ(find(findings, Cause::air_bells), nullptr);
  EXPECT_EQ(find(findings, Cause::dirty), nullptr) << "every film has some dust";
  for (int i = 0; i < 20; ++i) {
    add(MarkKind::dust, 0.9);
  }
  EXPECT_GT(confidence(causes(roll), Cause::dirty), 0.9);
}

TEST(FindCauses, UnfitScansAreSaid) {
  RollMeasurement roll = invented::roll_of({});
  roll.scans[0].fitness = Fitness::unfit;
  const std::vector<Finding> findings = causes(roll);
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].cause, Cause::unfit_scan);
  EXPECT_THAT(stated(findings[0]), ElementsAre(CauseStatement::no_scan_tells_density));
  ASSERT_EQ(findings[0].unfit_scans.size(), 1U);
  EXPECT_EQ(findings[0].unfit_scans[0].file, roll.scans[0].info.file);
  EXPECT_FALSE(findings[0].unfit_scans[0].caution);
  Caution inverted;
  inverted.severity = Severity::unfit;
  roll.scans[0].cautions.push_back(inverted);
  EXPECT_EQ(causes(roll)[0].unfit_scans[0].caution, inverted);
}

}  // namespace
}  // namespace fogline
