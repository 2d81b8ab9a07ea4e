#pragma once

#include <fogline/process/advice.h>

#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// Minutes and seconds as a clock shows them: "9:30".
std::string minutes_text(double seconds);

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

/// What can be done for the film in hand, in order, cautions left out.
std::vector<std::string> tonight_steps(const Advice& advice);

/// The first words of a step, for a short list: its first sentence, without what explains it.
std::string short_step(const std::string& step);

/// Why the recipe is what it is, under the name of its part: "Development", "Exposure", "Stop",
/// "Fixer", "Wash". What a part repeats of another is told once; cautions are left out.
struct RecipeReasons {
  std::string_view name;
  std::vector<std::string> sentences;
};

std::vector<RecipeReasons> recipe_reasons(const Advice& advice);

}  // namespace fogline
