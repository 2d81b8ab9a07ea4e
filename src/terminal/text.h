#pragma once

#include "words/number_text.h"

#include <fogline/record/record_json.h>

#include <optional>
#include <string>

namespace fogline {

/// Columns below which lines aren't broken any shorter.
inline constexpr int least_text_width = 40;

/// Lines that the report takes on a terminal of 80 columns, unless the whole is asked for: what a
/// usual window shows at once.
inline constexpr std::size_t screen_lines = 40;

struct TextOptions {
  /// Bold and dim by escape codes; false in a pipe.
  bool color = false;
  DensityUnits units = DensityUnits::density;
  /// Columns of the terminal, 40 or more; lines are broken at words.
  int width = 80;
  /// Breaks each doubt up by its sources.
  bool budget = false;
  /// The whole report instead of what fits on one screen.
  bool full = false;
  /// Where the page was written. Absent: nowhere.
  std::optional<std::string> page;
};

/// The report for a terminal, UTF-8. On one screen: the verdict, what to do tonight, what to set
/// for the next roll, the numbers of the roll, what stands against them, where the rest is;
/// sentences that the screen has no room for are left out, the least weighty first. A budget
/// follows the screen. In full: all sections of the report, in their order (`sections_of`).
std::string text_from_record(const RollRecord& record, const TextOptions& options);

}  // namespace fogline
