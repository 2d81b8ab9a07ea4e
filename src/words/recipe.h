#pragma once

#include <fogline/process/judge_roll.h>

#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// One line of the next roll's recipe.
struct RecipeLine {
  std::string_view name;
  /// What a person sets: "9:30 at 20 °C".
  std::string setting;
  /// How that differs from before, or how sure it is; may be empty.
  std::string note;
};

/// The next roll: develop, expose, stop, fix, wash.
std::vector<RecipeLine> recipe_lines(const Advice& advice);

/// Something that can be done for the film in hand: in full, and what is done alone.
struct TonightStep {
  std::string full;
  std::string what;
};

/// In the order that harms nothing, cautions left out.
std::vector<TonightStep> tonight_steps(const Advice& advice);

/// Why the recipe is what it is, under the name of its part: "Development", "Exposure", "Stop",
/// "Fixer", "Wash". What a part repeats of another is told once; cautions are left out.
struct RecipeReasons {
  std::string_view name;
  std::vector<std::string> sentences;
};

/// Of a judgement with advice.
std::vector<RecipeReasons> recipe_reasons(const Judgement& judgement);

}  // namespace fogline
