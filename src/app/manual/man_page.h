#pragma once

#include "app/command_line/command_spec.h"

#include <string>

namespace fogline {

/// A command's page in section 1: "fogline-measure", "fogline-log-add".
std::string page_name(const CommandSpec& command);

/// The page of a command in man(7) markup, ASCII.
std::string man_page(const Manual& manual, const CommandSpec& command);

/// The page of the program itself.
std::string man_page(const Manual& manual);

}  // namespace fogline
