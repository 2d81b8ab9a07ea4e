#pragma once

#include <cstdint>
#include <string>

namespace fogline {

/// Longest side of a picture: forty metres of film at 1,000 px/inch, ten at 4,000 (px).
inline constexpr std::uint32_t largest_side_px = 1'500'000;

/// Most pixels of a picture: a glass of 310 x 437 mm at 4,000 px/inch has 3.4e9. Below 2^32, so
/// that a code can be counted in 32 bits.
inline constexpr std::uint64_t largest_area_px = 4'000'000'000;

/// No scan, noisy as film is, is packed tighter than an all-white picture by deflate (1,032 to 1).
inline constexpr std::uint64_t largest_compression_ratio = 1100;

/// Throws FileError where a picture of this size can't be a scan.
void check_picture_size(const std::string& file, std::uint64_t width, std::uint64_t height);

/// Throws FileError where a file of `file_size` bytes can't hold `decoded` bytes of picture.
void check_decoded_size(const std::string& file, std::uint64_t decoded, std::uint64_t file_size,
                        std::uint64_t ratio);

}  // namespace fogline
