#include "app/manual/command_list.h"

#include <array>

namespace fogline {
namespace {

// In the order of the members of Takes.
constexpr std::array<std::string_view, 4> takes_words{"nothing", "text", "file", "topic"};

std::string line(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) {
    text += (text.empty() ? "" : "\t") + part;
  }
  return text + "\n";
}

std::string option_line(const std::string& command, const OptionSpec& option) {
  std::string words;
  for (const std::string_view word : option.words) {
    words += (words.empty() ? "" : " ") + std::string(word);
  }
  return line({"option", command, "--" + std::string(option.name),
               std::string(takes_words[static_cast<std::size_t>(option.takes)]),
               std::string(option.argument), words});
}

}  // namespace

std::string command_list(const Manual& manual) {
  std::string text;
  for (const CommandSpec& command : manual.commands) {
    const std::string name(command.name);
    text += line({"command", name});
    for (const OptionSpec& option : command.options) {
      text += option_line(name, option);
    }
    for (const ExampleSpec& example : command.examples) {
      text += line({"example", name, std::string(example.line)});
    }
  }
  for (const TopicSpec& topic : manual.topics) {
    text += line({"topic", std::string(topic.name)});
  }
  return text;
}

}  // namespace fogline
