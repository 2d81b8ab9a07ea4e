#pragma once

#include "words/cause_words.h"

#include <fogline/process/judge_roll.h>

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// From this probability on a cause is said as what happened; below it the report says that it
/// can't be told.
inline constexpr double told_from = 0.5;

/// "70 %", "over 99 %", "under 1 %".
std::string chance_text(double probability);

/// One of the five causes that exclude one another.
struct CauseChance {
  std::string_view name;
  double probability = 0.0;
};

/// All five, in an order that never changes, so that the eye compares rolls.
std::array<CauseChance, 5> cause_chances(const CauseProbabilities& causes);

/// What is concluded of light and development, in a sentence or two, doubt in numbers.
std::string judgement_sentence(const JudgedRoll& record);

/// What else was found and is likelier than not: "Also seen: dye left in the film (97 %)." Empty
/// where nothing was.
std::string also_sentence(const JudgedRoll& record);

/// The findings told in one part, most probable first.
std::vector<const Finding*> findings_at(const JudgedRoll& record, FindingPlace place);

/// What was found of clear film beyond its tint (which `tint_sentences` tells): fog.
std::vector<std::string> fog_sentences(const JudgedRoll& record);

}  // namespace fogline
