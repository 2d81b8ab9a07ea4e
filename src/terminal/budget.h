#pragma once

#include "terminal/text_layout.h"
#include "words/number_text.h"

#include <fogline/roll/roll_measurement.h>

namespace fogline {

/// Where the doubt of each number comes from, below its heading.
void put_budgets(TextLayout& layout, const RollMeasurement& measurement, DensityUnits units);

}  // namespace fogline
