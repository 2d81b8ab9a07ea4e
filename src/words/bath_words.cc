#include "words/bath_words.h"

#include "words/fact_words.h"

#include <array>

namespace fogline {

namespace {

using enum BathReason;

constexpr std::array<FactWords<BathReason>, 26> words{{
    {own_process,
     "Chromogenic film and colour film have a process of their own: keep to its baths and times."},
    {stop_longest,
     "Up to {longest_s:clock} for tabular-grain film is one practice (no source, weakly "
     "supported): its dye leaves in fresh fixer, sulfite and water more than here."},
    {stop_enough,
     "{enough_s:clock} stops any film (common practice, no source); more does no harm up to "
     "{longest_s:clock}."},
    {stop_water,
     "Water instead of acid: three fills of ten seconds each (common practice, no source)."},
    {stop_gas, "Turn the tank gently at first and vent it: acid on carbonate makes gas."},
    {clears_slowly,
     "It clears {clearing_over_fresh:1} times slower than fresh: spent at {spent_at:0} times "
     "(NAVEDTRA 14209)."},
    {takes_too_much_silver,
     "With the next roll it would have taken {units:0} rolls' worth of silver, more than the "
     "{units_per_litre:0} that a litre bears (Anchell, The Darkroom Cookbook; one litre is "
     "assumed; tabular-grain film counts {tabular_units:1} times, common practice)."},
    {looks_milky, "This roll's clear film looks milky, as film does that isn't fixed out."},
    {dye_left,
     "Dye is left in this roll, which also points to short or tired fixing, and no clearing test "
     "on the card says otherwise."},
    {fixes_too_long,
     "It clears so slowly that {time_s:clock} would be needed, and long fixing takes silver off "
     "the picture."},
    {make_up_fresh, "Make it up fresh rather than stronger."},
    {clearing_time_cubic,
     "{times:0} times the clearing time of {clearing_s:clock} (NAVEDTRA 14209)."},
    {clearing_time_tabular,
     "{times:0} times the clearing time of {clearing_s:clock} (as for tabular-grain film; common "
     "practice, no source)."},
    {fixer_kind_untold,
     "The kind of fixer isn't on a roll card, so no time can be told: rapid fixer "
     "{rapid_cubic_s:clock} (tabular-grain film {rapid_tabular_s:clock}), plain thiosulfate "
     "{plain_cubic_s:clock} to {plain_tabular_s:clock} (common practice, no source)."},
    {rapid_fixer,
     "Rapid fixer: {cubic_s:clock}, tabular-grain film {tabular_s:clock} (common practice, no "
     "source)."},
    {plain_fixer,
     "Plain or hardening fixer: {cubic_s:clock}, tabular-grain film {tabular_s:clock} (common "
     "practice, no source)."},
    {rapid_fixer_type_untold,
     "Rapid fixer: {cubic_s:clock}, tabular-grain film {tabular_s:clock} (common practice, no "
     "source). The film's type isn't known, so the longer."},
    {plain_fixer_type_untold,
     "Plain or hardening fixer: {cubic_s:clock}, tabular-grain film {tabular_s:clock} (common "
     "practice, no source). The film's type isn't known, so the longer."},
    {measure_clearing,
     "Better than any rule: time how long a piece of the same film takes to clear in this fixer, "
     "fresh and before each session, and write both on the card."},
    {running_water,
     "Running water: about {time_s:clock} at 18 to 24 °C, changed all through (common practice, no "
     "source)."},
    {wash_fills,
     " inversions; let the last stand for {rest_s:clock}, since only the way out of the gelatine "
     "takes time (common practice, no source; for a fixer without hardener)."},
    {hardened_film, "Hardened gelatine washes slowly, so fills aren't enough."},
    {fill_for_dye, "Dye is left in this roll: one fill more, the water at 20 to 24 °C."},
    // ISO 18917: iodine-amylose, methylene blue, silver sulfide; within 14 days of processing.
    {unseen_by_scan,
     "A scan shows neither thiosulfate left in the film nor silver complexes that didn't dissolve: "
     "a residual-thiosulfate test within two weeks (ISO 18917) and a residual-silver drop test on "
     "clear film do."},
    {handle_with_care, bath_caution},
    {told, "It was told by another report."},
}};
static_assert(rows_in_order(words));

std::string fills_text(const std::vector<int>& fills) {
  std::string text;
  for (std::size_t i = 0; i < fills.size(); ++i) {
    const char* before = i == 0 ? "" : i + 1 == fills.size() ? " and " : ", ";
    text += before + std::to_string(fills[i]);
  }
  return text;
}

}  // namespace

std::string bath_sentence(const Fact<BathReason>& reason, const BathAdvice& advice) {
  const std::string sentence = sentence_of<BathReason>(reason, words);
  return reason.kind == wash_fills && reason.told.empty()
             ? "Fills of fresh water with " + fills_text(advice.fills) + sentence
             : sentence;
}

std::vector<std::string> bath_sentences(const BathAdvice& advice) {
  std::vector<std::string> sentences;
  for (const Fact<BathReason>& reason : advice.reasons) {
    sentences.push_back(bath_sentence(reason, advice));
  }
  return sentences;
}

}  // namespace fogline
