#pragma once

#include "record/field_walker.h"

#include <fogline/process/advice.h>
#include <fogline/process/light_and_development.h>

#include <optional>

namespace fogline {

/// Advice, whose sentences speak of the aim: the one part that no table of its own can walk.
void walk_advice(FieldWalker& walker, Advice& advice, const Aim& aim);

/// The further measurement that would tell most, as its code.
void walk_measurement_code(FieldWalker& walker, std::optional<FurtherMeasurement>& measurement);

}  // namespace fogline
