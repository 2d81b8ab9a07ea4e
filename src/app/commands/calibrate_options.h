#pragma once

#include "app/commands/calibrate_command.h"

#include <vector>

namespace fogline {

/// The options of `fogline calibrate`, in the order in which help lists them.
std::vector<Option<CalibrateRequest>> calibrate_options();

}  // namespace fogline
