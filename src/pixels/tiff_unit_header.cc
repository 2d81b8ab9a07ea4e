#include "pixels/tiff_unit_header.h"

#include <utility>

namespace fogline {

namespace {

constexpr std::uint16_t type_short = 3;
constexpr std::uint16_t type_long = 4;
constexpr std::uint16_t type_undefined = 7;
constexpr std::uint16_t type_long8 = 16;

/// Bytes of a value that an entry of BigTIFF holds itself.
constexpr std::size_t inline_bytes = 8;
constexpr std::size_t entry_bytes = 20;
constexpr std::size_t fixed_bytes = 16;

/// Gathers numbers in a chosen byte order.
class ByteWriter {
 public:
  explicit ByteWriter(bool big_endian) : big_endian_(big_endian) {}

  void number(std::uint64_t value, std::size_t size) {
    for (std::size_t i = 0; i < size; ++i) {
      const std::size_t place = big_endian_ ? size - 1 - i : i;
      bytes.push_back(static_cast<std::uint8_t>(value >> (8U * place)));
    }
  }

  std::vector<std::uint8_t> bytes;

 private:
  bool big_endian_;
};

struct Entry {
  std::uint16_t tag;
  std::uint16_t type;
  std::uint64_t count;
  std::vector<std::uint8_t> value;
};

/// The one directory of the header.
class DirectoryWriter {
 public:
  explicit DirectoryWriter(bool big_endian) : big_endian_(big_endian) {}

  /// Tags must come in rising order. The value stands `count` times.
  void add(std::uint16_t tag, std::uint16_t type, std::uint64_t value, std::uint64_t count = 1) {
    ByteWriter writer(big_endian_);
    const std::size_t size = type == type_short ? 2 : type == type_long ? 4 : 8;
    for (std::uint64_t i = 0; i < count; ++i) {
      writer.number(value, size);
    }
    entries_.push_back(Entry{tag, type, count, std::move(writer.bytes)});
  }

  void add_pair(std::uint16_t tag, std::uint16_t first, std::uint16_t second) {
    ByteWriter writer(big_endian_);
    writer.number(first, 2);
    writer.number(second, 2);
    entries_.push_back(Entry{tag, type_short, 2, std::move(writer.bytes)});
  }

  void add_bytes(std::uint16_t tag, const void* bytes, std::size_t count) {
    const auto* first = static_cast<const std::uint8_t*>(bytes);
    entries_.push_back(Entry{tag, type_undefined, count, {first, first + count}});
  }

  [[nodiscard]] std::vector<std::uint8_t> finish() const {
    ByteWriter writer(big_endian_);
    writer.bytes.assign(2, big_endian_ ? 'M' : 'I');
    writer.number(43, 2);
    writer.number(8, 2);
    writer.number(0, 2);
    writer.number(fixed_bytes, 8);
    writer.number(entries_.size(), 8);
    std::size_t next_value = fixed_bytes + 8 + entries_.size() * entry_bytes + 8;
    std::vector<std::uint8_t> values;
    for (const Entry& entry : entries_) {
      writer.number(entry.tag, 2);
      writer.number(entry.type, 2);
      writer.number(entry.count, 8);
      if (entry.value.size() > inline_bytes) {
        writer.number(next_value, 8);
        values.insert(values.end(), entry.value.begin(), entry.value.end());
        next_value += entry.value.size();
      } else {
        writer.bytes.insert(writer.bytes.end(), entry.value.begin(), entry.value.end());
        writer.bytes.resize(writer.bytes.size() + inline_bytes - entry.value.size());
      }
    }
    writer.number(0, 8);
    writer.bytes.insert(writer.bytes.end(), values.begin(), values.end());
    return std::move(writer.bytes);
  }

 private:
  bool big_endian_;
  std::vector<Entry> entries_;
};

}  // namespace

std::vector<std::uint8_t> header_of_one_unit(TIFF* tiff, const TiffPage& page, std::uint64_t offset,
                                             std::uint64_t byte_count) {
  DirectoryWriter directory(TIFFIsBigEndian(tiff) != 0);
  const auto samples = static_cast<std::uint64_t>(page.samples_together());
  // A single plane of a colour picture is a grey picture to the decoder.
  const bool one_sample = samples == 1 && page.photometric == PHOTOMETRIC_RGB;
  const std::uint16_t photometric =
      one_sample ? std::uint16_t{PHOTOMETRIC_MINISBLACK} : page.photometric;
  directory.add(TIFFTAG_IMAGEWIDTH, type_long, page.unit_width);
  directory.add(TIFFTAG_IMAGELENGTH, type_long, page.unit_height);
  directory.add(TIFFTAG_BITSPERSAMPLE, type_short, page.bits, samples);
  directory.add(TIFFTAG_COMPRESSION, type_short, page.compression);
  directory.add(TIFFTAG_PHOTOMETRIC, type_short, photometric);
  directory.add(TIFFTAG_FILLORDER, type_short, page.fill_order);
  directory.add(TIFFTAG_STRIPOFFSETS, type_long8, offset);
  directory.add(TIFFTAG_SAMPLESPERPIXEL, type_short, samples);
  directory.add(TIFFTAG_ROWSPERSTRIP, type_long, page.unit_height);
  directory.add(TIFFTAG_STRIPBYTECOUNTS, type_long8, byte_count);
  directory.add(TIFFTAG_PLANARCONFIG, type_short, PLANARCONFIG_CONTIG);
  directory.add(TIFFTAG_PREDICTOR, type_short, tiff_short(tiff, TIFFTAG_PREDICTOR, 1));
  directory.add(TIFFTAG_SAMPLEFORMAT, type_short, page.sample_format, samples);
  std::uint32_t table_bytes = 0;
  void* tables = nullptr;
  if (page.compression == COMPRESSION_JPEG &&
      TIFFGetField(tiff, TIFFTAG_JPEGTABLES, &table_bytes, &tables) == 1 && table_bytes > 0) {
    directory.add_bytes(TIFFTAG_JPEGTABLES, tables, table_bytes);
  }
  if (page.photometric == PHOTOMETRIC_YCBCR) {
    std::uint16_t horizontal = 2;
    std::uint16_t vertical = 2;
    TIFFGetFieldDefaulted(tiff, TIFFTAG_YCBCRSUBSAMPLING, &horizontal, &vertical);
    directory.add_pair(TIFFTAG_YCBCRSUBSAMPLING, horizontal, vertical);
  }
  return directory.finish();
}

}  // namespace fogline
