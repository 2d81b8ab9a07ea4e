#include "calibrate.h"
#include "command_line.h"
#include "exit_status.h"
#include "help_text.h"
#include "measure.h"
#include "terminal.h"

#include <fogline/base/error.h>
#include <fogline/words/refusal_words.h>

#include <exception>
#include <new>
#include <string>
#include <vector>

namespace fogline {
namespace {

ExitStatus run(const std::vector<std::string>& arguments) {
  const Request request = request_from_arguments(arguments);
  if (request.version) {
    write_standard_output("fogline " FOGLINE_VERSION "\n");
  } else if (request.help) {
    write_standard_output(help_text(request.help->topic));
  } else if (request.measure) {
    return run_measure(*request.measure);
  } else if (request.calibrate) {
    return run_calibrate(*request.calibrate);
  }
  return ExitStatus::done;
}

// The one place where errors become sentences and statuses.
ExitStatus run_and_explain(const std::vector<std::string>& arguments) {
  try {
    return run(arguments);
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
