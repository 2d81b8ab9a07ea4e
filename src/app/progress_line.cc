#include "progress_line.h"

#include <algorithm>
#include <cstdio>
#include <utility>

#include <unistd.h>

namespace fogline {
namespace {

constexpr std::chrono::milliseconds patience{500};

}  // namespace

ProgressLine::ProgressLine(std::string file)
    : file_(std::move(file)),
      on_terminal_(isatty(STDERR_FILENO) == 1),
      start_(std::chrono::steady_clock::now()) {
  std::replace_if(
      file_.begin(), file_.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; }, '?');
}

ProgressLine::~ProgressLine() {
  if (shown_percent_ >= 0) {
    std::fputs("\r\x1b[K", stderr);
    std::fflush(stderr);
  }
}

Progress ProgressLine::callback() {
  return [this](double share) { show(share); };
}

void ProgressLine::show(double share) {
  if (!on_terminal_ || std::chrono::steady_clock::now() - start_ < patience) {
    return;
  }
  const int percent = static_cast<int>(100.0 * std::clamp(share, 0.0, 1.0));
  if (percent != shown_percent_) {
    shown_percent_ = percent;
    std::fprintf(stderr, "\rreading %s: %d %%\x1b[K", file_.c_str(), percent);
    std::fflush(stderr);
  }
}

}  // namespace fogline
