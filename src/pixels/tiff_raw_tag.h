#pragma once

#include "files/input_file.h"

#include <cstdint>
#include <vector>

namespace fogline {

/// The 16-bit numbers of a tag that libtiff keeps to itself (it drops GrayResponseCurve and its
/// unit), read from the directory at `directory_offset` of a classic TIFF. Empty where the tag is
/// absent, of another type, of more than 65,536 numbers, or the file a BigTIFF.
std::vector<std::uint16_t> raw_tiff_shorts(const InputFile& file, std::uint64_t directory_offset,
                                           std::uint16_t tag);

}  // namespace fogline
