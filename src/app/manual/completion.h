#pragma once

#include "app/command_line/command_spec.h"

#include <string>

namespace fogline {

/// A script for bash that completes commands, options, the words that options take, names of files
/// by their endings, and topics of the help. Needs nothing but bash 4.4.
std::string bash_completion(const Manual& manual);

}  // namespace fogline
