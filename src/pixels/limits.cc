#include "pixels/limits.h"

#include "files/input_file.h"

namespace fogline {

namespace {

/// Decoded sizes that are read without asking how they could fit (bytes): reading that much of
/// nothing takes no time worth a refusal.
constexpr std::uint64_t always_read_bytes = 64 << 20;

}  // namespace

void check_picture_size(const std::string& file, std::uint64_t width, std::uint64_t height) {
  if (width == 0 || height == 0) {
    refuse(file, Refusal::no_pixels);
  }
  if (width > largest_side_px || height > largest_side_px || width * height > largest_area_px) {
    refuse(file, Refusal::too_many_pixels,
           {static_cast<double>(width), static_cast<double>(height)});
  }
}

void check_decoded_size(const std::string& file, std::uint64_t decoded, std::uint64_t file_size,
                        std::uint64_t ratio) {
  const bool worth_asking = ratio == 1 || decoded > always_read_bytes;
  if (worth_asking && decoded / ratio > file_size) {
    refuse(file, Refusal::larger_than_file, {static_cast<double>(file_size)});
  }
}

}  // namespace fogline
