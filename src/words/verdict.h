#pragma once

#include "words/number_text.h"

#include <fogline/process/judge_roll.h>

#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// The report's first words: what is concluded, what was read, and how far it may be trusted.
struct Verdict {
  /// Light and development, in a sentence or two.
  std::string judgement;
  /// What else was found; may be empty.
  std::string also;
  std::string reading;
  std::string trust;
};

Verdict verdict_of(const JudgedRoll& record, DensityUnits units);

/// Frames that count: seen with a density, and not a repeat of an earlier frame.
std::vector<const FrameMeasurement*> counted_frames(const RollMeasurement& measurement);

/// Base plus fog of the roll: that of the scan in the middle when they are put in order.
std::optional<Quantity> roll_base_fog(const RollMeasurement& measurement);

}  // namespace fogline
