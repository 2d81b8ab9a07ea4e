#pragma once

#include "app/command_line/define_command.h"

#include <string>

namespace fogline {

/// `fogline help`, as asked for.
struct HelpRequest {
  /// A command's or a topic's name. Empty: the overview.
  std::string topic;
};

Command<HelpRequest> help_command();

}  // namespace fogline
