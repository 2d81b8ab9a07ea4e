#pragma once

#include "app/command_line/command_spec.h"

#include <string>
#include <vector>

namespace fogline {

/// What the command line asks for, read and checked; nothing is opened yet. `arguments` are the
/// program's, without its name. Throws UsageError.
Plan plan_from_arguments(const Manual& manual, const std::vector<std::string>& arguments);

}  // namespace fogline
