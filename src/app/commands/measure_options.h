#pragma once

#include "app/commands/measure_command.h"

#include <vector>

namespace fogline {

/// The options of `fogline measure`, in the order in which help lists them.
std::vector<Option<MeasureRequest>> measure_options();

}  // namespace fogline
