#include "process/own_process_film.h"

#include "process/advice_case.h"
#include "process/belief/weigh_light_and_time.h"
#include "process/causes/find_causes.h"
#include "process/invented_reading.h"
#include "tables/shipped_knowledge.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

/// A roll whose pictures and base would be judged fogged and long developed, were it silver.
RollMeasurement orange_roll() {
  invented::RollNumbers numbers;
  numbers.highlight = 1.9;
  numbers.base_fog = 0.8;
  RollMeasurement roll = invented::roll_of(numbers);
  for (ScanMeasurement& scan : roll.scans) {
    scan.tint.kind = Unknown::mask_of_colour_stock;
  }
  return roll;
}

TEST(OwnProcessFilm, TheCardDecidesThenTheMask) {
  RollCard card;
  EXPECT_EQ(why_own_process(orange_roll(), nullptr), Unknown::colour_film);
  EXPECT_EQ(why_own_process(orange_roll(), &card), Unknown::colour_film);
  card.film_type = FilmType::cubic;
  EXPECT_EQ(why_own_process(orange_roll(), &card), std::nullopt);
  card.film_type = FilmType::chromogenic;
  const RollMeasurement grey = invented::roll_of({});
  EXPECT_EQ(why_own_process(grey, &card), Unknown::own_process);
  EXPECT_EQ(why_own_process(grey, nullptr), std::nullopt);
}

// Without bare light no mask is seen, but the pictures' own colours are.
TEST(OwnProcessFilm, IsToldByColoursInItsPictures) {
  RollMeasurement roll = invented::roll_of({});
  roll.scans.front().tint.kind = Unknown::colours_in_pictures;
  EXPECT_EQ(why_own_process(roll, nullptr), Unknown::colour_film);
  roll.scans.front().tint.kind = Unknown::lamp_colour_hidden;
  EXPECT_EQ(why_own_process(roll, nullptr), std::nullopt);
}

TEST(OwnProcessFilm, ItsLightAndTimeArentJudged) {
  const RollMeasurement roll = orange_roll();
  const RollPopulation& population = shipped_knowledge().population;
  const Aim aim = invented::usual_aim();
  const LightOrTime weighed = weigh_light_and_time(roll, aim, population, nullptr);
  EXPECT_EQ(weighed.causes.why().kind, Unknown::colour_film);
  EXPECT_EQ(weighed.contrast_index.why().kind, Unknown::colour_film);
  EXPECT_EQ(weighed.exposure_stops.why().kind, Unknown::colour_film);
  for (const Finding& finding : find_causes(roll, weighed, aim, population, nullptr)) {
    EXPECT_NE(finding.cause, Cause::fogged);
    EXPECT_NE(finding.cause, Cause::over_developed);
    EXPECT_NE(finding.cause, Cause::not_exposed);
  }
  // The same numbers of a film that the card calls black-and-white are judged.
  RollCard card;
  card.film_type = FilmType::cubic;
  EXPECT_TRUE(weigh_light_and_time(roll, aim, population, &card).judged());
}

TEST(OwnProcessFilm, GetsNoTimesOfBlackAndWhiteBaths) {
  AdviceCase orange;
  orange.with_card = false;
  orange.contrast(0.8, 0.05);
  orange.roll.scans.front().tint.kind = Unknown::mask_of_colour_stock;
  const Advice advice = orange.advise();
  EXPECT_FALSE(advice.development.time_s || advice.development.change_percent);
  EXPECT_EQ(advice.development.predicted_contrast_index.why(), fact_of(Unknown::colour_film));
  for (const BathAdvice& bath : {advice.stop, advice.fix, advice.wash}) {
    EXPECT_FALSE(bath.time_s);
    ASSERT_EQ(bath.reasons.size(), 1U);
    EXPECT_EQ(bath.reasons.front().kind, BathReason::own_process);
  }
}

}  // namespace
}  // namespace fogline
