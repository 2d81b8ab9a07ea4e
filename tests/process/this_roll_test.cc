#include "advice_case.h"

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

using testing::HasSubstr;
using testing::Not;

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

/// Where a phrase first stands in the list; its length where nowhere.
std::size_t place(const std::vector<std::string>& steps, const std::string& phrase) {
  const auto found = std::find_if(steps.begin(), steps.end(), [&](const std::string& step) {
    return step.find(phrase) != std::string::npos;
  });
  return static_cast<std::size_t>(found - steps.begin());
}

TEST(ThisRoll, GoodFilmNeedsNothing) {
  AdviceCase good;
  good.find("normal");
  good.tint(TintKind::none);
  EXPECT_THAT(good.advise().this_roll, testing::ElementsAre("Nothing needs doing to this film."));
}

TEST(ThisRoll, MilkyFilmIsLookedAtThenFixed) {
  AdviceCase milky;
  milky.find("fixing-incomplete");
  const auto steps = milky.advise().this_roll;
  EXPECT_LT(place(steps, "over black"), place(steps, "fresh fixer"));
  EXPECT_EQ(place(steps, "sulfite, 20 g"), steps.size());
  EXPECT_EQ(place(steps, "window light"), steps.size());
}

TEST(ThisRoll, PossibleHazeIsOnlyLookedAt) {
  AdviceCase perhaps;
  perhaps.find("fixing-incomplete", 0.3);
  const auto steps = perhaps.advise().this_roll;
  EXPECT_EQ(place(steps, "over black"), 0U);
  EXPECT_EQ(place(steps, "fresh fixer"), steps.size());
}

TEST(ThisRoll, DyeGoesByFixerWashSulfiteLight) {
  AdviceCase dye;
  dye.find("dye-left");
  const auto steps = dye.advise().this_roll;
  EXPECT_LT(place(steps, "fresh fixer"), place(steps, "sulfite, 20 g"));
  EXPECT_LT(place(steps, "sulfite, 20 g"), place(steps, "window light"));
  EXPECT_LT(place(steps, "window light"), steps.size());
  EXPECT_THAT(steps[place(steps, "window light")], HasSubstr("residual-silver test"));
}

TEST(ThisRoll, ProvenFixingNeedsNoSecond) {
  AdviceCase dye;
  dye.find("dye-left");
  dye.card.fix = {FixKind::rapid, {}, 360.0, 3, 50.0, 45.0};
  const auto steps = dye.advise().this_roll;
  EXPECT_EQ(place(steps, "3 minutes in fresh fixer"), steps.size());
  EXPECT_LT(place(steps, "three more fills"), steps.size());
}

TEST(ThisRoll, StocksOwnTintIsSaid) {
  AdviceCase dye;
  dye.tint(TintKind::dye_left);
  dye.roll.scans.front().tint.may_be_stock = true;
  EXPECT_THAT(joined(dye.advise().this_roll), HasSubstr("may be this film's own"));
}

TEST(ThisRoll, MarksComeAfterFixing) {
  AdviceCase both;
  both.find("fixing-incomplete");
  both.find("drying-marks");
  const auto steps = both.advise().this_roll;
  EXPECT_LT(place(steps, "fresh fixer"), place(steps, "soak the film once"));
  EXPECT_LT(place(steps, "soak the film once"), steps.size());
  EXPECT_THAT(joined(steps), HasSubstr("Never wipe wet emulsion"));
}

TEST(ThisRoll, StainIsRinsedBeforeAcid) {
  AdviceCase yellow;
  yellow.tint(TintKind::yellow_stain);
  const std::string text = joined(yellow.advise().this_roll);
  EXPECT_LT(text.find("rinse"), text.find("citric acid"));
  AdviceCase stained;
  stained.find("stained");
  stained.tint(TintKind::image_stain);
  EXPECT_THAT(joined(stained.advise().this_roll), Not(HasSubstr("citric")));
}

TEST(ThisRoll, SilverIsLeftAndPaperNamed) {
  AdviceCase flat;
  flat.find("under-developed");
  RollMedians medians;
  medians.range = AdviceCase::quantity(0.71, 0.1);
  flat.roll.medians = medians;
  auto steps = flat.advise().this_roll;
  EXPECT_EQ(steps.front(), "Nothing needs doing to this film.");
  EXPECT_EQ(steps.back(), "Print on very hard paper, ISO range about R 70.");
  flat.card.print_with = PrintWith::condenser;
  EXPECT_THAT(flat.advise().this_roll.back(), HasSubstr("R 90, counted for condenser light"));
  flat.roll.medians->range->at_least = true;
  EXPECT_THAT(joined(flat.advise().this_roll), Not(HasSubstr("Print on")));
}

TEST(ThisRoll, LostPicturesAreSaid) {
  AdviceCase dead;
  dead.find("not-developed");
  EXPECT_THAT(joined(dead.advise().this_roll), HasSubstr("No picture can be brought back"));
  AdviceCase unfit;
  unfit.find("unfit-scan");
  unfit.find("dye-left");
  unfit.roll.scans.front().fitness = Fitness::unfit;
  EXPECT_EQ(unfit.advise().this_roll.size(), 1U);
  EXPECT_THAT(unfit.advise().this_roll.front(), HasSubstr("scanned again"));
}

/// Everything that an advice says.
std::string all_text(const Advice& advice) {
  return joined(advice.development.reasons) + joined(advice.exposure.reasons) +
         joined(advice.stop.reasons) + joined(advice.fix.reasons) + joined(advice.wash.reasons) +
         joined(advice.this_roll);
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
    EXPECT_THAT(text, HasSubstr("less than 5:00"));
  }
  const std::string tonight = lower(joined(advice.this_roll));
  for (const char* bath : {"fixer", "sulfite", "acid"}) {
    if (tonight.find(bath) != std::string::npos) {
      EXPECT_THAT(tonight, HasSubstr("gloves")) << tonight;
      EXPECT_THAT(tonight, HasSubstr("not down the drain"));
      EXPECT_THAT(tonight, HasSubstr("safety sheet"));
    }
  }
  EXPECT_FALSE(advice.this_roll.empty());
  EXPECT_FALSE(advice.fix.reasons.empty());
}

// No temperature above 27 degrees (80 F is the most that NAVEDTRA 14209 and SS0509 allow), nothing
// poisonous, no acid into fixer, cautions beside every bath.
TEST(ThisRoll, AdviceIsSafeInEverySituation) {
  constexpr std::array codes{
      "dye-left",      "fixing-incomplete", "stained", "drying-marks",  "over-developed",
      "under-exposed", "weak-developer",    "fogged",  "not-developed", "dirty"};
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
        one.find("fixing-incomplete");
        expect_safe(one);
      }
    }
  }
}

}  // namespace
}  // namespace fogline
