#pragma once

#include "words/number_text.h"

#include <fogline/process/judge_roll.h>

#include <string>
#include <vector>

namespace fogline {

/// One number of a roll in short: "base plus fog", "0.28 ± 0.03", and what explains it.
struct RollNumber {
  std::string name;
  std::string value;
  /// May be empty.
  std::string note;
};

/// The numbers by which a roll is known, each once, weightiest first; those that its verdict holds
/// already are left out. Empty where nothing was measured.
std::vector<RollNumber> roll_numbers(const JudgedRoll& roll, DensityUnits units);

}  // namespace fogline
