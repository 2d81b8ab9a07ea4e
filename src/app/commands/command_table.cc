#include "app/commands/command_table.h"

#include "app/commands/calibrate_command.h"
#include "app/commands/help_command.h"
#include "app/commands/measure_command.h"
#include "app/manual/help_card.h"
#include "terminal/scan_sheet.h"

// Adding a command touches its pair of files, NAME_command.h and NAME_command.cc in this folder,
// and its row in commands(). The pair holds the request (a struct), the spec with options and
// examples, and read, check and run; a command of a group has a name of two words ("log add") and a
// pair and a row of its own (log_add_command). What doesn't fit into 120 lines goes into files
// beside the pair, as measure's options, values and checks do. Parsing, help, man pages, completion
// and the tests of the command line follow by themselves.

namespace fogline {
namespace {

std::vector<CommandSpec> commands() {
  return {
      define_command(measure_command()),
      define_command(calibrate_command()),
      define_command(help_command()),
  };
}

std::vector<TopicSpec> topics() {
  return {
      {"scanning", "how to scan so that a scan can be measured", scan_sheet_text},
      {"card", "what a roll card holds, with an example", [](int) { return card_help(); }},
  };
}

}  // namespace

const Manual& manual() {
  static const Manual whole{
      .summary = "reads scans of developed black-and-white film as a densitometer would",
      .description = {"fogline measure strip.tif says whether light and development were right, "
                      "what to do with this film tonight and what to change for the next roll, "
                      "and writes strip.report.html beside the scan."},
      .commands = commands(),
      .topics = topics(),
  };
  return whole;
}

}  // namespace fogline
