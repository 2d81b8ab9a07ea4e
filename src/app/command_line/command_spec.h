#pragma once

#include "app/exit_status.h"

#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

// What a command is, as data. Parsing, `fogline help`, the man pages, bash completion and the tests
// of the command line follow from it, so that none of them can know an option that another doesn't.

namespace fogline {

/// What stands behind an option, or on the command line by itself. `topic`: a command or a topic of
/// the help.
enum class Takes { nothing, text, file, topic };

/// One option of a command.
struct OptionSpec {
  /// Without the two hyphens.
  std::string_view name = {};
  Takes takes = Takes::nothing;
  /// What help calls the value: "FILE". Empty where it is one of `words`.
  std::string_view argument = {};
  /// Values that are meant literally: all of them where `argument` is empty.
  std::vector<std::string_view> words = {};
  /// Endings, without the dot, of the files that completion offers first. Empty: any file.
  std::vector<std::string_view> endings = {};
  /// May be given more than once.
  bool repeats = false;
  /// What it does, whole sentences.
  std::string_view sentence = {};
  /// What holds where it isn't given. Empty: nothing does, or the sentence says it.
  std::string_view otherwise = {};
};

/// What a command takes besides its options.
struct OperandSpec {
  Takes takes = Takes::nothing;
  std::vector<std::string_view> endings = {};
};

/// One line as typed, "fogline measure strip.tif", and the sentence that says what it is for. Words
/// are parted by single blanks and hold none.
struct ExampleSpec {
  std::string_view line = {};
  std::string_view sentence = {};
};

struct StatusSpec {
  ExitStatus status = ExitStatus::done;
  std::string_view sentence = {};
};

/// What the user gave to one command, as text.
struct GivenOptions {
  std::vector<std::string> operands;
  /// By the option's name; a flag has one empty text.
  std::map<std::string, std::vector<std::string>, std::less<>> values;
};

/// What is left to do once a request has been read and checked.
using Plan = std::function<ExitStatus()>;

struct CommandSpec {
  /// One word, or two for a command of a group: "measure", "log add".
  std::string_view name = {};
  /// One line, no full stop: "measure the scans of one roll and write the report".
  std::string_view summary = {};
  /// What follows the name: "SCAN... [options]".
  std::string_view synopsis = {};
  /// A paragraph each.
  std::vector<std::string_view> description = {};
  OperandSpec operands = {};
  std::vector<OptionSpec> options = {};
  std::vector<StatusSpec> statuses = {};
  /// What else is to be said of the statuses. Empty: nothing.
  std::string_view status_note = {};
  std::vector<ExampleSpec> examples = {};
  /// Names of other commands and of topics.
  std::vector<std::string_view> see_also = {};
  /// Reads the request and checks it; opens nothing. Throws UsageError.
  std::function<Plan(const GivenOptions&)> plan = {};
};

/// What help knows besides the commands.
struct TopicSpec {
  std::string_view name = {};
  /// One line, no full stop.
  std::string_view summary = {};
  /// The text, broken at words to a width in columns.
  std::function<std::string(int width)> text = {};
};

/// The whole program as its help, man pages and completion tell it.
struct Manual {
  /// One line, no full stop.
  std::string_view summary = {};
  /// A paragraph each.
  std::vector<std::string_view> description = {};
  std::vector<CommandSpec> commands = {};
  std::vector<TopicSpec> topics = {};
};

}  // namespace fogline
