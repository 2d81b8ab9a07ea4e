#pragma once

#include <string>
#include <string_view>

namespace fogline {

/// How to print a roll that asks for this log exposure range of the paper: "Print on hard paper,
/// ISO range about R 90." `light` follows the range: ", counted for condenser light".
std::string printing_sentence(double log_exposure_range, std::string_view light);

}  // namespace fogline
