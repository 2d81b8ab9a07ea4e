#include "app/commands/help_command.h"

#include "app/command_line/usage_error.h"
#include "app/commands/command_table.h"
#include "app/commands/option_values.h"
#include "app/manual/help_text.h"
#include "app/terminal.h"

#include <algorithm>

namespace fogline {
namespace {

// A command of two words is asked for as two operands.
void read_topic(HelpRequest& request, const std::vector<std::string>& operands) {
  for (const std::string& word : operands) {
    request.topic += (request.topic.empty() ? "" : " ") + word;
  }
}

void check_help(const HelpRequest& request) {
  if (request.topic.empty()) {
    return;
  }
  const std::vector<std::string_view> topics = help_topics(manual());
  if (std::find(topics.begin(), topics.end(), request.topic) != topics.end()) {
    return;
  }
  if (request.topic.find(' ') != std::string::npos) {
    throw UsageError("help takes one topic: " + choice_of(topics));
  }
  throw UsageError("there is no help on \"" + request.topic + "\": the topics are " +
                   list_of(topics));
}

ExitStatus run_help(const HelpRequest& request) {
  write_standard_output(help_text(manual(), request.topic, standard_output_width()));
  return ExitStatus::done;
}

CommandSpec spec() {
  return {
      .name = "help",
      .summary = "say how a command is used, or tell of a topic",
      .synopsis = "[COMMAND|TOPIC]",
      .description = {"Prints how a command is used, or what there is to say of a topic; without "
                      "either, which commands and topics there are. fogline COMMAND --help prints "
                      "the same as fogline help COMMAND."},
      .operands = {.takes = Takes::topic},
      .statuses = {{ExitStatus::done, "Done."},
                   {ExitStatus::file_failed, "Standard output can't be written."},
                   {ExitStatus::wrong_use, "There is no such command or topic."}},
      .examples = {{"fogline help measure", "The options of measure."},
                   {"fogline help card", "What a roll card holds, with an example."}},
      .see_also = {"card", "scanning"},
  };
}

}  // namespace

Command<HelpRequest> help_command() {
  return {.spec = spec(),
          .options = {},
          .read_operands = read_topic,
          .check = check_help,
          .run = run_help};
}

}  // namespace fogline
