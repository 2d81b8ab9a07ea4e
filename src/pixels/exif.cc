#include "pixels/exif.h"

namespace fogline {

namespace {

constexpr std::uint16_t tag_x_resolution = 0x011A;
constexpr std::uint16_t tag_y_resolution = 0x011B;
constexpr std::uint16_t tag_resolution_unit = 0x0128;
constexpr std::uint16_t tag_exif_directory = 0x8769;
constexpr std::uint16_t tag_exposure_time = 0x829A;
constexpr std::uint16_t tag_f_number = 0x829D;

constexpr std::size_t entry_bytes = 12;
constexpr double mm_per_inch = 25.4;
constexpr double mm_per_cm = 10.0;

/// A block of bytes read in its own byte order; outside of it everything is zero.
class ByteReader {
 public:
  ByteReader(const std::uint8_t* bytes, std::size_t count) : bytes_(bytes), count_(count) {
    little_endian_ = count > 0 && bytes[0] == 'I';
  }

  [[nodiscard]] std::uint32_t number(std::size_t offset, std::size_t size) const {
    if (size > count_ || offset > count_ - size) {
      return 0;
    }
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < size; ++i) {
      const std::size_t place = little_endian_ ? size - 1 - i : i;
      value = (value << 8U) | bytes_[offset + place];
    }
    return value;
  }

  [[nodiscard]] std::optional<double> ratio(std::size_t offset) const {
    const std::uint32_t upper = number(offset, 4);
    const std::uint32_t lower = number(offset + 4, 4);
    if (lower == 0) {
      return std::nullopt;
    }
    return static_cast<double>(upper) / static_cast<double>(lower);
  }

 private:
  const std::uint8_t* bytes_;
  std::size_t count_;
  bool little_endian_ = true;
};

/// Calls `visit(tag, offset of the value field)` for each entry of a directory.
template <typename Visit>
void visit_entries(const ByteReader& reader, std::size_t directory, const Visit& visit) {
  const std::size_t entries = reader.number(directory, 2);
  for (std::size_t i = 0; i < entries; ++i) {
    const std::size_t entry = directory + 2 + i * entry_bytes;
    visit(static_cast<std::uint16_t>(reader.number(entry, 2)), entry + 8);
  }
}

}  // namespace

ExifFacts read_exif(const std::uint8_t* bytes, std::size_t count) {
  const ByteReader reader(bytes, count);
  ExifFacts facts;
  if (reader.number(2, 2) != 42) {
    return facts;
  }
  std::size_t exposure_directory = 0;
  std::uint32_t unit = 2;
  visit_entries(reader, reader.number(4, 4), [&](std::uint16_t tag, std::size_t value) {
    if (tag == tag_x_resolution) {
      facts.x_per_mm = reader.ratio(reader.number(value, 4));
    } else if (tag == tag_y_resolution) {
      facts.y_per_mm = reader.ratio(reader.number(value, 4));
    } else if (tag == tag_resolution_unit) {
      unit = reader.number(value, 2);
    } else if (tag == tag_exif_directory) {
      exposure_directory = reader.number(value, 4);
    }
  });
  if (exposure_directory != 0) {
    visit_entries(reader, exposure_directory, [&](std::uint16_t tag, std::size_t /*value*/) {
      facts.exposure_recorded |= tag == tag_exposure_time || tag == tag_f_number;
    });
  }
  const double unit_mm = unit == 2 ? mm_per_inch : mm_per_cm;
  const bool has_unit = unit == 2 || unit == 3;
  const auto per_mm = [&](std::optional<double>& value) {
    value = value && has_unit ? std::optional<double>(*value / unit_mm) : std::nullopt;
  };
  per_mm(facts.x_per_mm);
  per_mm(facts.y_per_mm);
  return facts;
}

}  // namespace fogline
