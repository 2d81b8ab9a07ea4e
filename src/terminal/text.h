#pragma once

#include "words/number_text.h"

#include <fogline/record/roll_record.h>

#include <string>

namespace fogline {

struct TextOptions {
  /// Bold and dim by escape codes; false in a pipe.
  bool color = false;
  DensityUnits units = DensityUnits::density;
  /// Columns of the terminal, 40 or more; lines are broken at words.
  int width = 80;
  /// Breaks each doubt up by its sources.
  bool budget = false;
};

/// The report for a terminal, UTF-8: the verdict in a sentence or two, then the numbers with their
/// doubt, what is not sure, how to scan better and how it was measured.
std::string text_from_record(const RollRecord& record, const TextOptions& options);

}  // namespace fogline
