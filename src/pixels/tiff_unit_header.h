#pragma once

#include "pixels/tiff_handle.h"
#include "pixels/tiff_page.h"

#include <cstdint>
#include <vector>

namespace fogline {

/// A BigTIFF header in the byte order of `tiff` for a picture that is one strip: the unit (strip or
/// tile) of `page` whose stored bytes lie at `offset` of the file to be.
std::vector<std::uint8_t> header_of_one_unit(TIFF* tiff, const TiffPage& page, std::uint64_t offset,
                                             std::uint64_t byte_count);

}  // namespace fogline
