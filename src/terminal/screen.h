#pragma once

#include "terminal/text.h"

#include <string>

namespace fogline {

/// The report in `screen_lines` lines (see `text_from_record`), whether or not all of it is asked
/// for. Narrower than 80 columns it takes more lines where what can't be left out does.
std::string screen_text(const RollRecord& record, const TextOptions& options);

}  // namespace fogline
