#include "app/commands/device_value.h"

#include "app/commands/meaning_from_text.h"
#include "app/commands/option_words.h"

namespace fogline {

ScannerDevice device_from_text(const std::string& text) {
  return meaning_from_text("device", device_words(), text);
}

}  // namespace fogline
