#pragma once

#include "process/advice/advise.h"
#include "process/belief/development_belief.h"

#include <vector>

namespace fogline {

/// Why a time is changed, or isn't.
enum class TimeVerdict { change, within_tolerance, too_little_known, light_first };

/// What the reasons of a development advice are told from.
struct TimeReasons {
  const AdviceGround& ground;
  const DevelopmentBelief& belief;
  TimeVerdict verdict = TimeVerdict::change;
  /// The next roll's time over this one's.
  double time_share = 1.0;
  /// The next roll gets another temperature.
  bool moved = false;

  /// What was seen, what it leads to, what it rests on, what to watch.
  [[nodiscard]] std::vector<Fact<DevelopmentReason>> facts(const DevelopmentAdvice& advice) const;
};

}  // namespace fogline
