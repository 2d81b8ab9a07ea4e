#include "app/command_line/command_line.h"

#include "app/command_line/parse_options.h"
#include "app/command_line/usage_error.h"
#include "app/manual/help_text.h"
#include "app/terminal.h"

#include <algorithm>

namespace fogline {
namespace {

Plan print_version() {
  return [] {
    write_standard_output("fogline " FOGLINE_VERSION "\n");
    return ExitStatus::done;
  };
}

Plan print_help(const Manual& manual, std::string_view topic) {
  return [&manual, topic = std::string(topic)] {
    write_standard_output(help_text(manual, topic, standard_output_width()));
    return ExitStatus::done;
  };
}

// A group alone, "log", names no command: say what it holds.
std::string sentence_for_no_command(const Manual& manual, const std::string& word) {
  std::string members;
  for (const CommandSpec& command : manual.commands) {
    if (command.name.starts_with(word + " ")) {
      members += (members.empty() ? "fogline " : ", fogline ") + std::string(command.name);
    }
  }
  return members.empty() ? "\"" + word + "\" is no command: try fogline --help"
                         : "\"" + word + "\" needs one more word: " + members;
}

const CommandSpec* find_command(const Manual& manual, const std::string& name) {
  const auto found = std::find_if(manual.commands.begin(), manual.commands.end(),
                                  [&](const CommandSpec& command) { return command.name == name; });
  return found == manual.commands.end() ? nullptr : &*found;
}

}  // namespace

Plan plan_from_arguments(const Manual& manual, const std::vector<std::string>& arguments) {
  if (arguments.empty()) {
    throw UsageError("say what to do: fogline measure SCAN, or fogline --help");
  }
  const std::string& first = arguments.front();
  if (first == "--version") {
    return print_version();
  }
  if (first == "--help" || first == "-h") {
    return print_help(manual, "");
  }
  std::ptrdiff_t words = 1;
  const CommandSpec* command = find_command(manual, first);
  if (command == nullptr && arguments.size() > 1) {
    command = find_command(manual, first + " " + arguments[1]);
    words = 2;
  }
  if (command == nullptr) {
    throw UsageError(sentence_for_no_command(manual, first));
  }
  const GivenOptions given =
      parse_options(command->options, {arguments.begin() + words, arguments.end()});
  if (given.values.contains(help_option().name)) {
    return print_help(manual, command->name);
  }
  return command->plan(given);
}

}  // namespace fogline
