#include "app/manual/help_text.h"

#include "app/manual/fill_text.h"
#include "words/columns.h"

#include <algorithm>

namespace fogline {
namespace {

// Where sentences begin beside options. Longer options push theirs to a line of its own.
constexpr std::size_t option_column = 28;

std::string list_row(std::string_view first, std::string_view second, std::size_t column,
                     int width) {
  const std::string indent(column, ' ');
  const std::string begin = "  " + std::string(first);
  if (columns(begin) + 2 <= column) {
    return filled(second, width, padded(begin, column), indent);
  }
  return begin + "\n" + filled(second, width, indent, indent);
}

std::string paragraphs(const std::vector<std::string_view>& texts, int width) {
  std::string all;
  for (const std::string_view text : texts) {
    all += "\n" + filled(text, width, "", "");
  }
  return all;
}

std::string option_list(const CommandSpec& command, int width) {
  std::string text = "\nOptions:\n";
  for (const OptionSpec& option : command.options) {
    std::string term = "--" + std::string(option.name);
    if (option.takes != Takes::nothing) {
      term += " " + argument_text(option);
    }
    text += list_row(term, option_sentences(option), option_column, width);
  }
  return text;
}

std::string example_list(const CommandSpec& command, int width) {
  std::string text = "\nExamples:\n";
  for (const ExampleSpec& example : command.examples) {
    text += filled(example.sentence, width, "  ", "  ") + typed_line(example.line, width, "      ");
  }
  return text;
}

std::string status_list(const CommandSpec& command, int width) {
  std::string text = "\nExit status:\n";
  for (const StatusSpec& status : command.statuses) {
    text += filled(status.sentence, width,
                   "  " + std::to_string(static_cast<int>(status.status)) + "  ", "     ");
  }
  if (!command.status_note.empty()) {
    text += filled(command.status_note, width, "  ", "  ");
  }
  return text;
}

std::string see_also(const CommandSpec& command, int width) {
  std::string text = "See also:";
  for (const std::string_view name : command.see_also) {
    text += (name == command.see_also.front() ? " fogline help " : ", fogline help ") +
            std::string(name);
  }
  return "\n" + filled(text + ".", width, "", "");
}

std::string command_help(const CommandSpec& command, int width) {
  const std::string use =
      "Use: fogline " + std::string(command.name) + " " + std::string(command.synopsis);
  std::string text = filled(use, width, "", "    ") + paragraphs(command.description, width) +
                     option_list(command, width) + example_list(command, width) +
                     status_list(command, width);
  return command.see_also.empty() ? text : text + see_also(command, width);
}

bool is_in_group(const CommandSpec& command, std::string_view group) {
  return command.name.starts_with(std::string(group) + " ");
}

// Where summaries begin beside the names of commands and topics.
std::size_t name_column(const Manual& manual) {
  std::size_t column = 0;
  for (const std::string_view name : help_topics(manual)) {
    column = std::max(column, columns(name) + 4);
  }
  return column;
}

std::string command_rows(const Manual& manual, std::string_view group, int width) {
  std::string text;
  for (const CommandSpec& command : manual.commands) {
    if (group.empty() || is_in_group(command, group)) {
      text += list_row(command.name, command.summary, name_column(manual), width);
    }
  }
  return text;
}

std::string group_help(const Manual& manual, std::string_view group, int width) {
  return "Commands of fogline " + std::string(group) + ":\n" + command_rows(manual, group, width);
}

std::string overview(const Manual& manual, int width) {
  std::string text = filled("fogline " + std::string(manual.summary) + ".", width, "", "") +
                     "\nUse: fogline COMMAND [options]\n     fogline --help | --version\n" +
                     "\nCommands:\n" + command_rows(manual, "", width) +
                     "\nTopics (fogline help TOPIC):\n";
  for (const TopicSpec& topic : manual.topics) {
    text += list_row(topic.name, topic.summary, name_column(manual), width);
  }
  return text + paragraphs(manual.description, width);
}

}  // namespace

std::vector<std::string_view> help_topics(const Manual& manual) {
  std::vector<std::string_view> topics;
  for (const CommandSpec& command : manual.commands) {
    const std::size_t blank = command.name.find(' ');
    const std::string_view group = command.name.substr(0, blank);
    if (blank != std::string_view::npos &&
        std::find(topics.begin(), topics.end(), group) == topics.end()) {
      topics.push_back(group);
    }
    topics.push_back(command.name);
  }
  for (const TopicSpec& topic : manual.topics) {
    topics.push_back(topic.name);
  }
  return topics;
}

std::string help_text(const Manual& manual, std::string_view topic, int width) {
  for (const CommandSpec& command : manual.commands) {
    if (command.name == topic) {
      return command_help(command, width);
    }
  }
  for (const TopicSpec& known : manual.topics) {
    if (known.name == topic) {
      return known.text(width);
    }
  }
  return topic.empty() ? overview(manual, width) : group_help(manual, topic, width);
}

}  // namespace fogline
