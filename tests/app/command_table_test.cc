#include "app/commands/command_table.h"

#include "app/command_line/command_line.h"
#include "app/command_line/usage_error.h"
#include "app/commands/option_values.h"
#include "app/manual/completion.h"
#include "app/manual/help_text.h"
#include "app/manual/man_page.h"
#include "words/columns.h"

#include <algorithm>
#include <sstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

// What must hold for every row of the table, those to come too.

namespace fogline {
namespace {

using testing::HasSubstr;

TEST(CommandTable, EveryExampleIsRightUse) {
  for (const CommandSpec& command : manual().commands) {
    EXPECT_FALSE(command.examples.empty()) << command.name;
    for (const ExampleSpec& example : command.examples) {
      std::vector<std::string> words = parts_of(std::string(example.line), ' ');
      EXPECT_EQ(words.front(), "fogline");
      words.erase(words.begin());
      EXPECT_NO_THROW(plan_from_arguments(manual(), words)) << example.line;
    }
  }
}

TEST(CommandTable, EveryOptionStandsInHelpManPageAndCompletion) {
  const std::string script = bash_completion(manual());
  for (const CommandSpec& command : manual().commands) {
    const std::string help = help_text(manual(), command.name, 80);
    const std::string page = man_page(manual(), command);
    for (const OptionSpec& option : command.options) {
      const std::string name = "--" + std::string(option.name);
      EXPECT_THAT(help, HasSubstr("\n  " + name + " "));
      EXPECT_THAT(page, testing::ContainsRegex("[.]TP\n.fB" + [&] {
                    std::string escaped;
                    for (const char c : name) {
                      escaped += c == '-' ? std::string(".-") : std::string(1, c);
                    }
                    return escaped;
                  }()));
      EXPECT_THAT(script, HasSubstr(" " + name));
    }
  }
}

TEST(CommandTable, TextsAreSentencesAndSummariesAreNone) {
  for (const CommandSpec& command : manual().commands) {
    EXPECT_TRUE(std::islower(static_cast<unsigned char>(command.summary.front())) != 0);
    EXPECT_FALSE(command.summary.ends_with('.')) << command.summary;
    for (const OptionSpec& option : command.options) {
      EXPECT_TRUE(option.sentence.ends_with('.')) << option.name;
      EXPECT_FALSE(option.otherwise.ends_with('.')) << option.name;
      EXPECT_EQ(option.takes == Takes::nothing, option.argument.empty() && option.words.empty())
          << option.name;
    }
    for (const StatusSpec& status : command.statuses) {
      EXPECT_TRUE(status.sentence.ends_with('.')) << status.sentence;
    }
  }
}

TEST(CommandTable, NamesStandOnceAndSeeAlsoIsThere) {
  std::vector<std::string_view> names = help_topics(manual());
  for (const CommandSpec& command : manual().commands) {
    for (const std::string_view name : command.see_also) {
      EXPECT_THAT(names, testing::Contains(name)) << command.name;
    }
  }
  std::sort(names.begin(), names.end());
  EXPECT_EQ(std::adjacent_find(names.begin(), names.end()), names.end());
}

TEST(CommandTable, HelpTakesEveryTopicAndNoOther) {
  for (const std::string_view topic : help_topics(manual())) {
    std::vector<std::string> words = parts_of(std::string(topic), ' ');
    words.insert(words.begin(), "help");
    EXPECT_NO_THROW(plan_from_arguments(manual(), words)) << topic;
  }
  EXPECT_THROW(plan_from_arguments(manual(), {"help", "cooking"}), UsageError);
  EXPECT_THROW(plan_from_arguments(manual(), {"help", "measure", "card"}), UsageError);
}

TEST(CommandTable, NoHelpIsWiderThanItsTerminal) {
  for (const std::string_view topic : help_topics(manual())) {
    if (topic == "card") {
      continue;  // an example to be copied: lines as they are
    }
    for (const std::size_t width : {60U, 80U, 100U}) {
      std::istringstream lines(help_text(manual(), topic, static_cast<int>(width)));
      for (std::string line; std::getline(lines, line);) {
        EXPECT_LE(columns(line), width) << line;
      }
    }
  }
}

}  // namespace
}  // namespace fogline
