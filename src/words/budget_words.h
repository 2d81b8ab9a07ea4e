#pragma once

#include "words/number_text.h"

#include <fogline/roll/roll_measurement.h>

#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// Where the doubt of each number comes from, as a table: its head, a row a number (name, density
/// with its doubt, a cell a source, the part that all rolls share), and what the columns mean. No
/// row where no scan tells a budget.
std::vector<std::string> budget_head();
std::vector<std::vector<std::string>> budget_rows(const RollMeasurement& measurement,
                                                  DensityUnits units);
std::string_view budget_explanation();

}  // namespace fogline
