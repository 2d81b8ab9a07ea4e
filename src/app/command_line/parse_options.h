#pragma once

#include "app/command_line/command_spec.h"

#include <string>
#include <vector>

namespace fogline {

/// The option that every command has: `--help`.
OptionSpec help_option();

/// Parts what follows a command's name into options and operands. Values stay text, so that no
/// number depends on the locale. Throws UsageError for an option that the command doesn't have, one
/// without its value, or one given twice that may stand once.
GivenOptions parse_options(const std::vector<OptionSpec>& options,
                           const std::vector<std::string>& arguments);

}  // namespace fogline
