#include "terminal.h"

#include <fogline/base/refusal.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string>

#include <sys/ioctl.h>
#include <unistd.h>

namespace fogline {

bool standard_output_wants_color() {
  // No other thread runs yet that could change the environment.
  const char* no_color = std::getenv("NO_COLOR");  // NOLINT(concurrency-mt-unsafe)
  const char* terminal = std::getenv("TERM");      // NOLINT(concurrency-mt-unsafe)
  return isatty(STDOUT_FILENO) == 1 && (no_color == nullptr || *no_color == '\0') &&
         terminal != nullptr && std::string_view(terminal) != "dumb";
}

int standard_output_width() {
  constexpr int pipe_width = 80;
  constexpr int widest = 100;  // longer lines are hard to read
  winsize size{};
  if (isatty(STDOUT_FILENO) == 1 && ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 &&
      size.ws_col > 0) {
    return std::min(static_cast<int>(size.ws_col), widest);
  }
  return pipe_width;
}

void write_standard_output(std::string_view bytes) {
  const bool written = std::fwrite(bytes.data(), 1, bytes.size(), stdout) == bytes.size();
  if (!written || std::fflush(stdout) != 0) {
    throw FileError("standard output", Refusal::output_stopped);
  }
}

void complain(std::string_view sentence) {
  std::string line = "fogline: ";
  for (const char c : sentence) {  // names of files may hold codes that a terminal obeys
    const auto code = static_cast<unsigned char>(c);
    line += code < 0x20 || code == 0x7F ? '?' : c;
  }
  const bool closed = line.ends_with('.') || line.ends_with('?') || line.ends_with('!');
  line += closed ? "\n" : ".\n";
  std::fwrite(line.data(), 1, line.size(), stderr);
}

}  // namespace fogline
