#pragma once

#include <string>

namespace fogline {

/// How to set up a flatbed, and a camera over a light panel, so that their scans can be measured:
/// UTF-8 text broken at words to `width` columns (40 or more).
std::string scan_sheet_text(int width);

}  // namespace fogline
