#pragma once

#include "app/command_line/command_spec.h"

namespace fogline {

/// Every command and topic of the program.
const Manual& manual();

}  // namespace fogline
