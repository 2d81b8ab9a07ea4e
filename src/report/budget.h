#pragma once

#include "report/text_layout.h"

#include <fogline/report/number_text.h>
#include <fogline/roll/roll_measurement.h>

#include <string>

namespace fogline {

/// Where the doubt of each number comes from, as a table of the page behind a fold; empty where no
/// scan tells a budget.
std::string budget_part(const RollMeasurement& measurement, DensityUnits units);

/// The same for a terminal.
void put_budgets(TextLayout& layout, const RollMeasurement& measurement, DensityUnits units);

}  // namespace fogline
