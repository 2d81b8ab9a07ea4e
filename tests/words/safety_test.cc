#include "words/safety.h"

#include "one_of_each.h"
#include "record/invented_judgement.h"
#include "said.h"
#include "tables/shipped_knowledge.h"
#include "words/bath_words.h"
#include "words/rescue_words.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;

/// Advice that leaves every bath to the process of the film's maker.
Advice without_baths() {
  Advice advice;
  for (BathAdvice* bath : {&advice.stop, &advice.fix, &advice.wash}) {
    bath->reasons = {fact_of(BathReason::own_process)};
  }
  return advice;
}

TEST(SafetySentences, CoverWhoMixesAndWhatIsThrownAway) {
  std::string all;
  for (const std::string_view sentence : safety_sentences()) {
    EXPECT_EQ(fault_of(sentence), "") << sentence;
    all.append(sentence).append("\n");
  }
  for (const char* matter : {"gloves", "eyes", "fresh air", "children", "food", "acid to fixer",
                             "silver", "drain", "safety sheet"}) {
    EXPECT_THAT(all, HasSubstr(matter));
  }
  EXPECT_THAT(std::string(safety_line()), HasSubstr("Gloves"));
}

// A bath may be advised by any reason of any bath but one, and by every step that uses one.
TEST(NamesABath, ForEveryReasonThatAdvisesOne) {
  EXPECT_FALSE(names_a_bath(without_baths()));
  for (const FactRow<BathReason>& row : fact_rows<BathReason>()) {
    for (BathAdvice Advice::*bath : {&Advice::stop, &Advice::fix, &Advice::wash}) {
      Advice advice = without_baths();
      (advice.*bath).reasons.push_back(fact_of(row.kind));
      EXPECT_EQ(names_a_bath(advice), row.kind != BathReason::own_process) << row.code;
    }
  }
  for (const FactRow<RescueStep>& row : fact_rows<RescueStep>()) {
    Advice advice = without_baths();
    advice.this_roll = {fact_of(row.kind)};
    EXPECT_EQ(names_a_bath(advice), bath_of(row.kind).has_value()) << row.code;
  }
}

// Whatever puts film into something that isn't plain water is known to be a bath.
TEST(NamesABath, WhereWordsNameOne) {
  constexpr std::array<std::string_view, 4> named{"fresh fixer", "to the litre", "wetting agent",
                                                  "fills of water"};
  for (const Fact<RescueStep>& step : one_of_each<RescueStep>()) {
    const std::string what = short_step_sentence(step);
    const bool names_one = std::any_of(
        named.begin(), named.end(),
        [&](const std::string_view bath) { return what.find(bath) != std::string::npos; });
    if (names_one && !is_caution(step.kind)) {
      EXPECT_TRUE(bath_of(step.kind).has_value()) << what;
    }
  }
}

TEST(BathCaution, IsOneSentenceThatStandsAlone) {
  EXPECT_EQ(fault_of(bath_caution), "");
  EXPECT_EQ(std::count(bath_caution.begin(), bath_caution.end(), '.'), 1);
  BathAdvice advice;
  EXPECT_EQ(bath_sentence(fact_of(BathReason::handle_with_care), advice), bath_caution);
  EXPECT_TRUE(is_caution(BathReason::handle_with_care));
  EXPECT_TRUE(is_caution(RescueStep::handle_with_care));
}

/// Clear film of each colour with marks on it, a clean roll, an unfit one, and none.
std::vector<RollMeasurement> rolls_with_faults() {
  std::vector<RollMeasurement> rolls{invented::roll(), invented::unfit_roll(), {}};
  for (const TintKind kind :
       {TintKind::dye_left, TintKind::fixer_haze, TintKind::yellow_stain, TintKind::image_stain}) {
    RollMeasurement roll = invented::roll();
    Tint& tint = roll.scans.front().tint;
    tint = invented::dye();
    tint.kind = kind;
    tint.components = {{kind, invented::density(0.15, 0.02), 0.98}};
    roll.scans.front().marks = invented::marks();
    rolls.push_back(std::move(roll));
  }
  return rolls;
}

/// Cards of film with common baths and of film with its own, and none.
std::vector<std::optional<RollCard>> cards_of_film() {
  std::vector<std::optional<RollCard>> cards{std::nullopt};
  for (const FilmType type : {FilmType::tabular, FilmType::chromogenic}) {
    RollCard card = invented::card();
    card.film_type = type;
    cards.emplace_back(card);
  }
  return cards;
}

template <typename Kind>
bool has_caution(const std::vector<Fact<Kind>>& facts) {
  return std::any_of(facts.begin(), facts.end(),
                     [](const Fact<Kind>& fact) { return is_caution(fact.kind); });
}

// Whoever reads one part of the advice alone, in JSON, finds the caution there.
TEST(BathCaution, GoesAlongWhereverAdviceNamesABath) {
  std::size_t with_bath = 0;
  std::size_t without = 0;
  for (const RollMeasurement& roll : rolls_with_faults()) {
    for (const std::optional<RollCard>& card : cards_of_film()) {
      const auto advice =
          judge_roll(roll, card ? &*card : nullptr, std::nullopt, shipped_knowledge()).advice;
      if (!names_a_bath(advice)) {
        ++without;
        EXPECT_TRUE(!advice || !has_caution(advice->fix.reasons));
        continue;
      }
      ++with_bath;
      EXPECT_TRUE(has_caution(advice->fix.reasons) || has_caution(advice->this_roll));
      const bool rescue_uses_one =
          std::any_of(advice->this_roll.begin(), advice->this_roll.end(),
                      [](const auto& step) { return bath_of(step.kind).has_value(); });
      EXPECT_TRUE(!rescue_uses_one || has_caution(advice->this_roll));
    }
  }
  EXPECT_GT(with_bath, 8U);
  EXPECT_GT(without, 5U);
}

}  // namespace
}  // namespace fogline
