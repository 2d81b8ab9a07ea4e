#pragma once

#include <string_view>

namespace fogline {

/// A file of `calibration/` as this build ships it: the program needs no data folder. Throws
/// std::out_of_range for a name that isn't shipped.
std::string_view calibration_text(std::string_view name);

}  // namespace fogline
