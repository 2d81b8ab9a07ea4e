#pragma once

#include "pixels/tiff_page.h"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace fogline {

/// Turns `count` bytes as stored in an uncompressed TIFF into host order: bits within bytes first
/// (FillOrder 2), then bytes within samples.
void to_host_order(const TiffPage& page, bool swapped, std::uint8_t* bytes, std::size_t count);

/// Makes samples in host order ready to hand on: white-is-zero codes are inverted, 32-bit and float
/// samples become float from 0 to 1 in `floats`. Returns where the ready samples lie: in `bytes` or
/// in `floats`. `count` is in bytes.
const void* ready_samples(const TiffPage& page, std::uint8_t* bytes, std::size_t count,
                          std::vector<float>& floats);

/// IEEE 754 half precision to single.
float float_from_half(std::uint16_t half);

}  // namespace fogline
