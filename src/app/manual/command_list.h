#pragma once

#include "app/command_line/command_spec.h"

#include <string>

namespace fogline {

/// The table of commands for the tests of the command line, one thing a line, parts set off by
/// tabs: `command NAME`, `option NAME --OPTION TAKES ARGUMENT WORDS`, `example NAME LINE`, `topic
/// NAME`.
std::string command_list(const Manual& manual);

}  // namespace fogline
