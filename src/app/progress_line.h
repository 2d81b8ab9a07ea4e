#pragma once

#include <fogline/base/scan_source.h>

#include <chrono>
#include <string>

namespace fogline {

/// One line on a terminal's standard error that says how far a long read is. Shown only where it
/// takes longer than half a second and standard error is a terminal; wiped at the end.
class ProgressLine {
 public:
  explicit ProgressLine(std::string file);
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;
  ProgressLine(ProgressLine&&) = delete;
  ProgressLine& operator=(ProgressLine&&) = delete;
  ~ProgressLine();

  /// Valid as long as this line lives.
  Progress callback();
  /// Tells the share done, 0 to 1.
  void show(double share);

 private:
  std::string file_;
  bool on_terminal_;
  std::chrono::steady_clock::time_point start_;
  int shown_percent_ = -1;
};

}  // namespace fogline
