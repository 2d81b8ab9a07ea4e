#pragma once

#include "app/command_line/define_command.h"
#include "app/command_line/usage_error.h"

#include <string>
#include <vector>

namespace fogline {

/// The request that a command makes of arguments. Throws UsageError.
template <typename Request>
Request request_of(const Command<Request>& command, const std::vector<std::string>& arguments) {
  return request_from_given(command, parse_options(define_command(command).options, arguments));
}

/// The sentence by which a command refuses arguments; empty where it takes them.
template <typename Request>
std::string refusal_of(const Command<Request>& command, const std::vector<std::string>& arguments) {
  try {
    request_of(command, arguments);
    return "";
  } catch (const UsageError& error) {
    return error.what();
  }
}

}  // namespace fogline
