#include "pixels/tiff_raw_tag.h"

#include <algorithm>
#include <array>

namespace fogline {

namespace {

constexpr std::size_t entry_bytes = 12;
constexpr std::uint32_t type_short = 3;
constexpr std::uint32_t most_numbers = 65536;

std::uint32_t number_at(const std::uint8_t* bytes, std::size_t size, bool little_endian) {
  std::uint32_t value = 0;
  for (std::size_t i = 0; i < size; ++i) {
    value = (value << 8U) | bytes[little_endian ? size - 1 - i : i];
  }
  return value;
}

/// Bytes of the file; those beyond its end are zero.
std::vector<std::uint8_t> bytes_at(const InputFile& file, std::uint64_t offset, std::size_t count) {
  std::vector<std::uint8_t> bytes(count);
  file.read_some(offset, bytes.data(), count);
  return bytes;
}

}  // namespace

std::vector<std::uint16_t> raw_tiff_shorts(const InputFile& file, std::uint64_t directory_offset,
                                           std::uint16_t tag) {
  const auto head = bytes_at(file, 0, 4);
  const bool little_endian = head[0] == 'I';
  if (number_at(head.data() + 2, 2, little_endian) != 42) {
    return {};
  }
  const auto count_bytes = bytes_at(file, directory_offset, 2);
  const std::size_t entries = number_at(count_bytes.data(), 2, little_endian);
  const auto directory = bytes_at(file, directory_offset + 2, entries * entry_bytes);
  for (std::size_t i = 0; i < entries; ++i) {
    const std::uint8_t* entry = directory.data() + i * entry_bytes;
    if (number_at(entry, 2, little_endian) != tag) {
      continue;
    }
    const std::uint32_t count = number_at(entry + 4, 4, little_endian);
    if (number_at(entry + 2, 2, little_endian) != type_short || count > most_numbers) {
      return {};
    }
    const std::size_t size = std::size_t{count} * 2;
    const auto values = size <= 4 ? std::vector<std::uint8_t>(entry + 8, entry + 8 + size)
                                  : bytes_at(file, number_at(entry + 8, 4, little_endian), size);
    std::vector<std::uint16_t> numbers(count);
    for (std::size_t n = 0; n < count; ++n) {
      numbers[n] = static_cast<std::uint16_t>(number_at(values.data() + 2 * n, 2, little_endian));
    }
    return numbers;
  }
  return {};
}

}  // namespace fogline
