#pragma once

#include "app/command_line/command_spec.h"

#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// What `fogline help TOPIC` knows: the names of commands, each group before its own, then those of
/// topics.
std::vector<std::string_view> help_topics(const Manual& manual);

/// `fogline help TOPIC` and `fogline COMMAND --help`, broken at words to `width` columns (60 or
/// more). `topic` is one of help_topics(); empty: the overview.
std::string help_text(const Manual& manual, std::string_view topic, int width);

}  // namespace fogline
