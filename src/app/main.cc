#include "app/command_line/command_line.h"
#include "app/command_line/usage_error.h"
#include "app/commands/command_table.h"
#include "exit_status.h"
#include "terminal.h"

#include <fogline/base/refusal.h>
#include <fogline/words/refusal_words.h>

#include <exception>
#include <new>
#include <string>
#include <vector>

namespace fogline {
namespace {

// The one place where errors become sentences and statuses.
ExitStatus run_and_explain(const std::vector<std::string>& arguments) {
  try {
    return plan_from_arguments(manual(), arguments)();
  } catch (const UsageError& error) {
    complain(error.what());
    return ExitStatus::wrong_use;
  } catch (const FileError& error) {
    complain(sentence_of(error));
  } catch (const std::bad_alloc&) {
    complain("memory ran out: close other programs, or scan at a lower resolution");
  } catch (const std::exception& error) {
    complain(std::string("something went wrong that fogline should have foreseen: ") +
             error.what());
  }
  return ExitStatus::file_failed;
}

}  // namespace
}  // namespace fogline

int main(int argument_count, char** arguments) {
  const std::vector<std::string> given(arguments + (argument_count > 0 ? 1 : 0),
                                       arguments + argument_count);
  return static_cast<int>(fogline::run_and_explain(given));
}
