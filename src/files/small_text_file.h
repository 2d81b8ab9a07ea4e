#pragma once

#include <fogline/base/refusal.h>

#include <cstddef>
#include <string>

namespace fogline {

/// Reads a whole text file. Throws FileError where it can't be read, or, as `too_large`, where it
/// has more than `most_bytes`.
std::string read_small_text(const std::string& path, std::size_t most_bytes, Refusal too_large);

}  // namespace fogline
