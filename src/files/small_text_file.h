#pragma once

#include <cstddef>
#include <string>

namespace fogline {

/// Reads a whole text file. Throws FileError where it can't be read, or is larger than
/// `most_bytes`; `kind` says what was wanted ("wedge reference").
std::string read_small_text(const std::string& path, std::size_t most_bytes,
                            const std::string& kind);

}  // namespace fogline
