#include "app/commands/scanner_values.h"

#include "app/command_line/usage_error.h"
#include "app/commands/meaning_from_text.h"
#include "app/commands/option_values.h"
#include "app/commands/option_words.h"
#include "film/wedges/find_wedges.h"

namespace fogline {

ScannerDevice device_from_text(const std::string& text) {
  return meaning_from_text("device", device_words(), text);
}

int first_step_from_text(const std::string& text) {
  const int first = whole_number_from_text(text).value_or(0);
  if (first < 1 || first > most_wedge_steps) {
    throw UsageError("--first is the number of a step, 1 to 41, not \"" + text + "\"");
  }
  return first;
}

}  // namespace fogline
