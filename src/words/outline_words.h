#pragma once

#include <fogline/roll/roll_measurement.h>

#include <string_view>

namespace fogline {

/// What an outline on the strip stands for, for the key beside it.
std::string_view outline_words(OutlineKind kind);

}  // namespace fogline
