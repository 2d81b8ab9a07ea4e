#include "advice_case.h"
#include "words/advice_words.h"
#include "words/bath_words.h"
#include "words/rescue_words.h"

#include <fogline/process/light_and_development.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <regex>
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;
using Step = RescueStep;

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

TEST(ThisRoll, GoodFilmNeedsNothing) {
  AdviceCase good;
  good.find(Cause::normal);
  good.tint(TintKind::none);
  EXPECT_THAT(kinds(good.advise().this_roll), ElementsAre(Step::nothing_needed));
}

TEST(ThisRoll, MilkyFilmIsLookedAtThenFixed) {
  AdviceCase milky;
  milky.find(Cause::fixing_incomplete);
  EXPECT_THAT(kinds(milky.advise().this_roll),
              ElementsAre(Step::look_for_haze, Step::fix_milky, Step::handle_with_care));
}

TEST(ThisRoll, PossibleHazeIsOnlyLookedAt) {
  AdviceCase perhaps;
  perhaps.find(Cause::fixing_incomplete, 0.3);
  EXPECT_THAT(kinds(perhaps.advise().this_roll),
              ElementsAre(Step::look_for_haze, Step::handle_with_care));
}

TEST(ThisRoll, DyeGoesByFixerWashSulfiteLight) {
  AdviceCase dye;
  dye.find(Cause::dye_left);
  EXPECT_THAT(kinds(dye.advise().this_roll), ElementsAre(Step::fix_for_dye, Step::wash_out_dye,
                                                         Step::fade_dye, Step::handle_with_care));
}

TEST(ThisRoll, ProvenFixingNeedsNoSecond) {
  AdviceCase dye;
  dye.find(Cause::dye_left);
  dye.card.fix = {FixKind::rapid, {}, 360.0, 3, 50.0, 45.0};
  EXPECT_THAT(kinds(dye.advise().this_roll),
              ElementsAre(Step::wash_out_dye, Step::fade_dye, Step::handle_with_care));
}

TEST(ThisRoll, StocksOwnTintIsSaid) {
  AdviceCase dye;
  dye.tint(TintKind::dye_left);
  dye.roll.scans.front().tint.may_be_stock = true;
  EXPECT_EQ(kinds(dye.advise().this_roll).front(), Step::doubt_tint);
}

TEST(ThisRoll, MarksComeAfterFixing) {
  AdviceCase both;
  both.find(Cause::fixing_incomplete);
  both.find(Cause::drying_marks);
  EXPECT_THAT(kinds(both.advise().this_roll),
              ElementsAre(Step::look_for_haze, Step::fix_milky, Step::wipe_drying_marks,
                          Step::soak_out_rings, Step::handle_with_care));
}

TEST(ThisRoll, StainIsRinsedBeforeAcid) {
  AdviceCase yellow;
  yellow.tint(TintKind::yellow_stain);
  EXPECT_THAT(kinds(yellow.advise().this_roll), Contains(Step::clear_stain));
  const std::string text = step_sentence(fact_of(Step::clear_stain));
  EXPECT_LT(text.find("rinse"), text.find("citric acid"));
  AdviceCase stained;
  stained.find(Cause::stained);
  stained.tint(TintKind::image_stain);
  EXPECT_THAT(kinds(stained.advise().this_roll), Not(Contains(Step::clear_stain)));
  EXPECT_THAT(kinds(stained.advise().this_roll), Contains(Step::keep_stain_of_silver));
}

TEST(ThisRoll, SilverIsLeftAndPaperNamed) {
  AdviceCase flat;
  flat.find(Cause::under_developed);
  RollMedians medians;
  medians.range = AdviceCase::quantity(0.71, 0.1);
  flat.roll.medians = medians;
  EXPECT_THAT(kinds(flat.advise().this_roll),
              ElementsAre(Step::nothing_needed, Step::leave_silver, Step::print_on));
  EXPECT_EQ(number_of(flat.advise().this_roll, Step::print_on, "log_exposure_range"), 0.71);
  flat.card.print_with = PrintWith::condenser;
  EXPECT_NEAR(number_of(flat.advise().this_roll, Step::print_on_by_condenser, "log_exposure_range"),
              0.71 * condenser_factor, 1e-9);
  flat.roll.medians->range->at_least = true;
  EXPECT_EQ(kinds(flat.advise().this_roll).back(), Step::leave_silver);
}

TEST(ThisRoll, LostPicturesAreSaid) {
  AdviceCase dead;
  dead.find(Cause::not_developed);
  EXPECT_EQ(kinds(dead.advise().this_roll).back(), Step::not_developed);
  AdviceCase unfit;
  unfit.find(Cause::unfit_scan);
  unfit.find(Cause::dye_left);
  unfit.roll.scans.front().fitness = Fitness::unfit;
  EXPECT_THAT(kinds(unfit.advise().this_roll), ElementsAre(Step::scan_again));
}

TEST(ThisRoll, BathsAreKnownByTheirSteps) {
  EXPECT_EQ(bath_of(Step::fix_for_dye), Bath::fixer);
  EXPECT_EQ(bath_of(Step::wash_out_dye), Bath::sulfite);
  EXPECT_EQ(bath_of(Step::clear_stain), Bath::acid);
  EXPECT_EQ(bath_of(Step::retouch), std::nullopt);
}

/// All of a list of sentences, for a search.
std::string joined(const std::vector<std::string>& sentences) {
  std::string text;
  for (const std::string& sentence : sentences) {
    text += sentence + "\n";
  }
  return text;
}

/// Everything that an advice says.
std::string all_text(const Advice& advice) {
  std::string text = joined(development_sentences(advice.development, {})) +
                     joined(exposure_sentences(advice.exposure)) +
                     joined(bath_sentences(advice.stop)) + joined(bath_sentences(advice.fix)) +
                     joined(bath_sentences(advice.wash));
  for (const Fact<RescueStep>& step : advice.this_roll) {
    text += step_sentence(step) + "\n";
  }
  return text;
}

/// Warmest temperature that a text speaks of.
double warmest_c(const std::string& text) {
  static const std::regex degrees("([0-9]+(\\.[0-9]+)?) °C");
  double warmest = 0.0;
  for (std::sregex_iterator at(text.begin(), text.end(), degrees), end; at != end; ++at) {
    warmest = std::max(warmest, std::stod((*at)[1]));
  }
  return warmest;
}

constexpr std::array forbidden{
    "ferricyanide",  "dichromate", "permanganate", "mercur",     "uranium",  "cyanide",
    "thiocarbamide", "chromium",   "lead acetate", "well fixed", "intensif", "reducer",
    "down the sink", "sulfide",    "acetic",       "boil",       "hot water"};

void expect_safe(const AdviceCase& one) {
  const Advice advice = one.advise();
  const std::string text = lower(all_text(advice));
  for (const char* word : forbidden) {
    EXPECT_THAT(text, Not(HasSubstr(word)));
  }
  const double read_c = one.card.development.temperature_c.value_or(0.0);
  if (read_c <= 27.0) {
    EXPECT_LE(warmest_c(all_text(advice)), 27.0);
  }
  EXPECT_LE(advice.development.temperature_c.value_or(0.0), 27.0);
  if (advice.development.time_s.value_or(300.0) < 300.0) {
    EXPECT_THAT(kinds(advice.development.reasons), Contains(DevelopmentReason::too_short));
  }
  for (const Fact<RescueStep>& step : advice.this_roll) {
    if (bath_of(step.kind)) {
      EXPECT_THAT(kinds(advice.this_roll), Contains(Step::handle_with_care));
    }
  }
  EXPECT_FALSE(advice.this_roll.empty());
  EXPECT_FALSE(advice.fix.reasons.empty());
}

// No temperature above 27 degrees (80 F is the most that NAVEDTRA 14209 and SS0509 allow), nothing
// poisonous, no acid into fixer, cautions beside every bath.
TEST(ThisRoll, AdviceIsSafeInEverySituation) {
  constexpr std::array codes{Cause::dye_left,       Cause::fixing_incomplete,
                             Cause::stained,        Cause::drying_marks,
                             Cause::over_developed, Cause::under_exposed,
                             Cause::weak_developer, Cause::fogged,
                             Cause::not_developed,  Cause::dirty};
  for (unsigned set = 0; set < 1U << codes.size(); ++set) {
    AdviceCase one;
    for (std::size_t i = 0; i < codes.size(); ++i) {
      if ((set >> i & 1U) != 0) {
        one.find(codes[i]);
      }
    }
    expect_safe(one);
  }
}

TEST(ThisRoll, AdviceIsSafeAtEveryTemperature) {
  for (double temperature_c = 10.0; temperature_c <= 40.0; temperature_c += 3.0) {
    for (const double contrast : {0.40, 0.58, 0.85}) {
      for (const auto type : {FilmType::cubic, FilmType::tabular, FilmType::chromogenic}) {
        AdviceCase one;
        one.card.film_type = type;
        one.contrast(contrast, 0.06);
        one.developed(390, temperature_c);
        one.find(Cause::fixing_incomplete);
        expect_safe(one);
      }
    }
  }
}

}  // namespace
}  // namespace fogline
