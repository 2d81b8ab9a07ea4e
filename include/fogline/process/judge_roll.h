#pragma once

#include <fogline/process/advice.h>
#include <fogline/process/finding.h>
#include <fogline/process/light_and_development.h>

#include <optional>

namespace fogline {

/// What is known before the roll is looked at: data of `calibration/` (`shipped_prior_knowledge`
/// has it).
struct PriorKnowledge;

/// What is concluded from one roll.
struct Judgement {
  Aim aim;
  LightOrTime light_or_time;
  /// Where the roll has a curve.
  std::optional<CurveJudgement> curve;
  /// Most probable first.
  std::vector<Finding> findings;
  /// Absent where no scan could be read at all.
  std::optional<Advice> advice;

  friend bool operator==(const Judgement&, const Judgement&) = default;
};

/// One roll: what its scans say, what the person wrote of it, and what is concluded from both.
struct JudgedRoll {
  RollMeasurement measurement;
  /// Absent where no card was given.
  std::optional<RollCard> card;
  Judgement judgement;

  friend bool operator==(const JudgedRoll&, const JudgedRoll&) = default;
};

/// Judges one roll by itself. `card` may be nullptr; `wanted_contrast_index` goes before the card's
/// aim.
Judgement judge_roll(const RollMeasurement& roll, const RollCard* card,
                     std::optional<double> wanted_contrast_index, const PriorKnowledge& knowledge);

}  // namespace fogline
