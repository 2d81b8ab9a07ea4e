#pragma once

#include "app/command_line/command_spec.h"
#include "app/command_line/parse_options.h"

#include <utility>

namespace fogline {

/// An option and where its value goes.
template <typename Request>
struct Option {
  OptionSpec spec;
  /// Turns the text given (empty for a flag) into what it means. Throws UsageError.
  void (*read)(Request&, const std::string& text);
};

/// A command with its typed request: read from the options, then checked, then run.
template <typename Request>
struct Command {
  /// All but options and plan, which follow from the rest.
  CommandSpec spec;
  std::vector<Option<Request>> options;
  void (*read_operands)(Request&, const std::vector<std::string>& operands);
  /// Refuses what can't be meant though each option can; nullptr where there is nothing to refuse.
  /// Throws UsageError.
  void (*check)(const Request&);
  ExitStatus (*run)(const Request&);
};

/// The request that the options given make, checked. Throws UsageError.
template <typename Request>
Request request_from_given(const Command<Request>& command, const GivenOptions& given) {
  Request request;
  command.read_operands(request, given.operands);
  for (const Option<Request>& option : command.options) {
    const auto found = given.values.find(option.spec.name);
    if (found != given.values.end()) {
      for (const std::string& text : found->second) {
        option.read(request, text);
      }
    }
  }
  if (command.check != nullptr) {
    command.check(request);
  }
  return request;
}

/// The command without its request's type: the row of the table.
template <typename Request>
CommandSpec define_command(const Command<Request>& command) {
  CommandSpec spec = command.spec;
  for (const Option<Request>& option : command.options) {
    spec.options.push_back(option.spec);
  }
  spec.options.push_back(help_option());
  spec.plan = [command](const GivenOptions& given) -> Plan {
    return
        [request = request_from_given(command, given), run = command.run] { return run(request); };
  };
  return spec;
}

}  // namespace fogline
