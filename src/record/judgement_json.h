#pragma once

#include "record/json_values.h"

#include <fogline/process/judge_roll.h>

namespace fogline {

/// The schema's `findings`.
Json json_from_findings(const std::vector<Finding>& findings);
/// What the person develops for.
Json json_from_aim(const Aim& aim);
/// Probabilities of light and time, and what they rest on.
Json json_from_light_or_time(const LightOrTime& light_or_time);
/// What a curve means for development, paper and scanning.
Json json_from_curve_judgement(const CurveJudgement& judgement);
/// The schema's `advice`. A null in it is explained by the `reasons` beside it.
Json json_from_advice(const Advice& advice, const Aim& aim);

}  // namespace fogline
