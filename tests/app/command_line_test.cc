#include "app/command_line/command_line.h"

#include "app/command_line/define_command.h"
#include "app/command_line/usage_error.h"
#include "app/manual/completion.h"
#include "app/manual/help_text.h"
#include "app/manual/man_page.h"
#include "words/columns.h"

#include <sstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

// An invented program with a group of two commands: what a logbook will need of the table.

namespace fogline {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

struct AddRequest {
  std::vector<std::string> names;
  std::string card;
};

// What the last run saw; a run is a plain function.
AddRequest last_added;

Command<AddRequest> add_command() {
  return {
      .spec = {.name = "log add",
               .summary = "add a roll's numbers",
               .synopsis = "NAME... [options]",
               .description = {"Adds a roll, with its \\ and its ±."},
               .statuses = {{ExitStatus::done, "Done."}},
               .examples = {{"fogline log add r-12 --card c.toml", "A roll."}},
               .see_also = {"log list", "card"}},
      .options =
          {{{.name = "card", .takes = Takes::file, .argument = "FILE", .sentence = "A card."},
            [](AddRequest& request, const std::string& text) { request.card = text; }}},
      .read_operands = [](AddRequest& request,
                          const std::vector<std::string>& names) { request.names = names; },
      .check =
          [](const AddRequest& request) {
            if (request.names.empty()) {
              throw UsageError("name a roll");
            }
          },
      .run =
          [](const AddRequest& request) {
            last_added = request;
            return ExitStatus::unfit_scan;
          },
  };
}

Manual invented() {
  Command<AddRequest> list = add_command();
  list.spec.name = "log list";
  return {.summary = "keeps rolls",
          .description = {"It keeps them."},
          .commands = {define_command(add_command()), define_command(list)},
          .topics = {{"card", "what a card holds", [](int) { return std::string("A card.\n"); }}}};
}

std::string refusal(const std::vector<std::string>& arguments) {
  const Manual manual = invented();
  try {
    plan_from_arguments(manual, arguments);
    return "";
  } catch (const UsageError& error) {
    return error.what();
  }
}

TEST(CommandLine, FindsACommandOfAGroupAndRunsItsRequest) {
  const Manual manual = invented();
  const Plan plan = plan_from_arguments(manual, {"log", "add", "r-12", "--card", "c.toml", "r-13"});
  EXPECT_TRUE(last_added.names.empty()) << "run while it was read";
  EXPECT_EQ(plan(), ExitStatus::unfit_scan);
  EXPECT_THAT(last_added.names, ElementsAre("r-12", "r-13"));
  EXPECT_EQ(last_added.card, "c.toml");
}

TEST(CommandLine, ChecksBeforeItRuns) {
  EXPECT_EQ(refusal({"log", "add"}), "name a roll");
}

TEST(CommandLine, SaysWhatAGroupHolds) {
  EXPECT_EQ(refusal({"log"}), "\"log\" needs one more word: fogline log add, fogline log list");
  EXPECT_EQ(refusal({"log", "lose"}),
            "\"log\" needs one more word: fogline log add, fogline log list");
  EXPECT_THAT(refusal({"lo"}), HasSubstr("\"lo\" is no command"));
  EXPECT_THAT(refusal({"add"}), HasSubstr("\"add\" is no command"));
}

TEST(CommandLine, ReadsNoRequestWhereHelpIsAskedFor) {
  EXPECT_EQ(refusal({"log", "add", "--help"}), "");
  EXPECT_THAT(refusal({"log", "add", "--help", "--colour"}), HasSubstr("--colour"));
}

TEST(CommandLine, TellsAnEmptyLineWhatToDo) {
  EXPECT_THAT(refusal({}), HasSubstr("say what to do"));
}

TEST(Manual, HelpAndManPageOfACommandOfAGroupNameIt) {
  const Manual manual = invented();
  EXPECT_THAT(help_topics(manual), ElementsAre("log", "log add", "log list", "card"));
  const std::string help = help_text(manual, "log add", 80);
  EXPECT_THAT(help, HasSubstr("fogline log add NAME... [options]\n"));
  EXPECT_THAT(help, HasSubstr("fogline help log list, fogline help card."));
  EXPECT_EQ(help_text(manual, "log", 80),
            "Commands of fogline log:\n  log add   add a roll's numbers\n"
            "  log list  add a roll's numbers\n");
  EXPECT_EQ(page_name(manual.commands.front()), "fogline-log-add");
  const std::string page = man_page(manual, manual.commands.front());
  EXPECT_THAT(page, HasSubstr(".TH FOGLINE\\-LOG\\-ADD 1 "));
  EXPECT_THAT(page, HasSubstr("\\fBfogline\\-log\\-list\\fR(1),\n\\fBfogline help card\\fR"));
  EXPECT_THAT(page, HasSubstr("with its \\e and its \\[u00B1]."));
  EXPECT_THAT(page, HasSubstr("fogline log add r\\-12 \\-\\-card c.toml\n"));
}

TEST(Manual, CompletionKnowsGroups) {
  const std::string script = bash_completion(invented());
  EXPECT_THAT(script, HasSubstr("_fogline_words \"$word\" log --help --version;"));
  EXPECT_THAT(script, HasSubstr("_fogline_words \"$word\" add list;"));
  EXPECT_THAT(script, HasSubstr("\"log add --card\") _fogline_files \"$word\"; return ;;"));
}

TEST(Manual, NoLineIsWiderThanAsked) {
  const Manual manual = invented();
  for (const int width : {60, 80}) {
    std::istringstream lines(help_text(manual, "", width) + help_text(manual, "log add", width));
    for (std::string line; std::getline(lines, line);) {
      EXPECT_LE(columns(line), static_cast<std::size_t>(width)) << line;
      EXPECT_THAT(line, Not(testing::EndsWith(" ")));
    }
  }
}

}  // namespace
}  // namespace fogline
