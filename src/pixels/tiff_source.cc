#include "pixels/tiff_source.h"

#include "pixels/tiff_samples.h"

#include <algorithm>

namespace fogline {

namespace {

/// Largest strip or tile that is decoded whole. Its stored bytes are held beside it, so that one
/// reader takes at most about 100 MB.
constexpr std::uint64_t largest_whole_unit_bytes = 40 << 20;

/// Codecs that hold a second decoded copy of a unit get half of that.
constexpr std::uint64_t largest_opaque_unit_bytes = largest_whole_unit_bytes / 2;

/// Uncompressed samples fetched at once: fits the second-level cache, so that the samples are still
/// there when they are summed.
constexpr std::size_t direct_read_bytes = 192 << 10;

/// Decoders that may run side by side over one row of very large tiles.
constexpr std::size_t most_row_decoders = 64;

/// Stored bytes of a compressed unit are at most about this many times its decoded ones.
constexpr std::uint64_t worst_growth = 2;
constexpr std::uint64_t growth_slack_bytes = 64 << 10;

}  // namespace

TiffSource::TiffSource(const std::string& path, const TiffPage& page)
    : file_(path), page_(page), handle_(path) {
  handle_.go_to(page.directory_offset);
  if (page.photometric == PHOTOMETRIC_YCBCR) {
    TIFFSetField(handle_.get(), TIFFTAG_JPEGCOLORMODE, JPEGCOLORMODE_RGB);
  }
  if (page.compression == COMPRESSION_NONE) {
    way_ = Way::direct;
  } else if (page.unit_bytes() <=
             (decodes_by_rows(page) ? largest_whole_unit_bytes : largest_opaque_unit_bytes)) {
    way_ = Way::whole_units;
  } else if (decodes_by_rows(page)) {
    way_ = Way::by_rows;
  } else {
    refuse(path, Refusal::compressed_whole);
  }
}

TiffSource::~TiffSource() = default;

int TiffSource::rows_together() const {
  const auto rows = static_cast<int>(std::min(page_.unit_height, page_.height));
  return way_ == Way::whole_units ? rows : 1;
}

int TiffSource::columns_together() const {
  const auto columns = static_cast<int>(std::min(page_.unit_width, page_.width));
  return way_ == Way::whole_units ? columns : static_cast<int>(page_.width);
}

std::size_t TiffSource::working_bytes() const {
  constexpr std::size_t small = 1 << 20;
  const auto unit = static_cast<std::size_t>(page_.unit_bytes());
  // The decoded unit, its stored bytes, its samples as float.
  const std::size_t copies = page_.sample_type() == SampleType::f32 ? 4 : 2;
  return small + (way_ == Way::whole_units ? copies * unit : 0);
}

std::unique_ptr<BlockSource> TiffSource::fork() const {
  return std::make_unique<TiffSource>(file_.path(), page_);
}

void TiffSource::read_blocks(const RegionPx& region, const BlockSink& sink) {
  const auto unit_width = static_cast<int>(page_.unit_width);
  const auto unit_height = static_cast<int>(page_.unit_height);
  const auto width = static_cast<int>(page_.width);
  const auto height = static_cast<int>(page_.height);
  const int across = (width - 1) / unit_width + 1;
  const int down = (height - 1) / unit_height + 1;
  const int planes = page_.separate_planes ? page_.channels() : 1;
  for (int v = region.y / unit_height; v <= (region.y + region.height - 1) / unit_height; ++v) {
    for (int plane = 0; plane < planes; ++plane) {
      for (int u = region.x / unit_width; u <= (region.x + region.width - 1) / unit_width; ++u) {
        Unit unit;
        unit.index =
            static_cast<std::uint32_t>((static_cast<std::int64_t>(plane) * down + v) * across + u);
        unit.plane = plane;
        const int x = u * unit_width;
        const int y = v * unit_height;
        unit.area =
            RegionPx{x, y, std::min(unit_width, width - x), std::min(unit_height, height - y)};
        RegionPx wanted;
        if (intersect(unit.area, region, wanted)) {
          read_unit(unit, wanted, sink);
        }
      }
    }
  }
}

void TiffSource::read_unit(const Unit& unit, const RegionPx& wanted, const BlockSink& sink) {
  TIFF* tiff = handle_.get();
  const std::uint32_t units = page_.tiled ? TIFFNumberOfTiles(tiff) : TIFFNumberOfStrips(tiff);
  if (unit.index >= units || TIFFGetStrileOffset(tiff, unit.index) == 0) {
    refuse(file_.path(), Refusal::strip_missing);
  }
  switch (way_) {
    case Way::direct:
      read_direct(unit, wanted, sink);
      break;
    case Way::whole_units:
      read_whole(unit, wanted, sink);
      break;
    case Way::by_rows:
      read_rows(unit, wanted, sink);
      break;
  }
}

void TiffSource::deliver(const RegionPx& area, int plane, const void* samples,
                         std::size_t row_samples, const BlockSink& sink) const {
  Block block;
  block.area = area;
  block.type = page_.sample_type();
  block.first_channel = plane;
  block.channels = page_.separate_planes ? 1 : page_.channels();
  block.samples = samples;
  block.pixel_stride = page_.samples_together();
  block.row_stride = static_cast<std::ptrdiff_t>(row_samples);
  sink(block);
}

void TiffSource::read_direct(const Unit& unit, const RegionPx& wanted, const BlockSink& sink) {
  const std::uint64_t offset = TIFFGetStrileOffset(handle_.get(), unit.index);
  const std::size_t unit_row = page_.unit_row_bytes();
  const std::size_t wanted_row = static_cast<std::size_t>(wanted.width) * page_.pixel_bytes();
  const auto column = static_cast<std::size_t>(wanted.x - unit.area.x) * page_.pixel_bytes();
  const bool rows_touch = wanted_row == unit_row;
  const std::size_t fitting = std::max<std::size_t>(1, direct_read_bytes / wanted_row);
  const bool swapped = TIFFIsByteSwapped(handle_.get()) != 0;
  const std::size_t sample_bytes = page_.bits / 8U;
  for (int done = 0; done < wanted.height;) {
    const int rows = static_cast<int>(
        std::min<std::size_t>(fitting, static_cast<std::size_t>(wanted.height - done)));
    const std::size_t count = static_cast<std::size_t>(rows) * wanted_row;
    buffer_.resize(std::max(buffer_.size(), count));
    const auto first_row = static_cast<std::uint64_t>(wanted.y + done - unit.area.y);
    const std::uint64_t start = offset + first_row * unit_row + column;
    if (rows_touch) {
      file_.read_exactly(start, buffer_.data(), count);
    } else {
      for (int row = 0; row < rows; ++row) {
        const auto r = static_cast<std::size_t>(row);
        file_.read_exactly(start + r * unit_row, buffer_.data() + r * wanted_row, wanted_row);
      }
    }
    to_host_order(page_, swapped, buffer_.data(), count);
    const void* samples = ready_samples(page_, buffer_.data(), count, floats_);
    deliver(RegionPx{wanted.x, wanted.y + done, wanted.width, rows}, unit.plane, samples,
            wanted_row / sample_bytes, sink);
    done += rows;
  }
}

void TiffSource::decode_unit(const Unit& unit) {
  if (held_unit_ == unit.index) {
    return;
  }
  held_unit_ = -1;
  TIFF* tiff = handle_.get();
  const std::uint64_t unit_bytes = page_.unit_bytes();
  const std::uint64_t stored = TIFFGetStrileByteCount(tiff, unit.index);
  const std::uint64_t by_library =
      page_.tiled ? TIFFTileSize64(tiff) : TIFFVStripSize64(tiff, page_.unit_height);
  if (by_library != unit_bytes || stored > worst_growth * unit_bytes + growth_slack_bytes) {
    refuse(file_.path(), Refusal::strip_size_unfit);
  }
  buffer_.resize(static_cast<std::size_t>(unit_bytes));
  const std::size_t expected =
      page_.tiled ? buffer_.size()
                  : static_cast<std::size_t>(unit.area.height) * page_.unit_row_bytes();
  const auto room = static_cast<tmsize_t>(expected);
  handle_.forget_error();
  const tmsize_t got = page_.tiled ? TIFFReadEncodedTile(tiff, unit.index, buffer_.data(), room)
                                   : TIFFReadEncodedStrip(tiff, unit.index, buffer_.data(), room);
  if (got != room || !handle_.error().empty()) {
    refuse_damaged(file_.path(), handle_.error());
  }
  held_samples_ = ready_samples(page_, buffer_.data(), expected, floats_);
  held_unit_ = unit.index;
}

void TiffSource::read_whole(const Unit& unit, const RegionPx& wanted, const BlockSink& sink) {
  decode_unit(unit);
  const std::size_t row_samples = static_cast<std::size_t>(page_.unit_width) *
                                  static_cast<std::size_t>(page_.samples_together());
  const auto first = static_cast<std::size_t>(wanted.y - unit.area.y) * row_samples +
                     static_cast<std::size_t>(wanted.x - unit.area.x) *
                         static_cast<std::size_t>(page_.samples_together());
  const std::size_t ready_bytes =
      page_.sample_type() == SampleType::f32 ? sizeof(float) : page_.bits / 8U;
  deliver(wanted, unit.plane, static_cast<const std::uint8_t*>(held_samples_) + first * ready_bytes,
          row_samples, sink);
}

TiffUnitRows& TiffSource::decoder_of(const Unit& unit) {
  for (const RowDecoder& decoder : decoders_) {
    if (decoder.unit == unit.index) {
      return *decoder.rows;
    }
  }
  // Decoders of units above or below are done with.
  std::erase_if(decoders_, [&](const RowDecoder& decoder) { return decoder.y != unit.area.y; });
  if (decoders_.size() >= most_row_decoders) {
    refuse(file_.path(), Refusal::too_many_huge_tiles);
  }
  decoders_.push_back(RowDecoder{
      unit.index, unit.area.y, std::make_unique<TiffUnitRows>(file_, handle_, page_, unit.index)});
  return *decoders_.back().rows;
}

void TiffSource::read_rows(const Unit& unit, const RegionPx& wanted, const BlockSink& sink) {
  TiffUnitRows& decoder = decoder_of(unit);
  const std::size_t row_bytes = page_.unit_row_bytes();
  const std::size_t row_samples = static_cast<std::size_t>(page_.unit_width) *
                                  static_cast<std::size_t>(page_.samples_together());
  const auto column = static_cast<std::size_t>(wanted.x - unit.area.x) *
                      static_cast<std::size_t>(page_.samples_together());
  const std::size_t ready_bytes =
      page_.sample_type() == SampleType::f32 ? sizeof(float) : page_.bits / 8U;
  buffer_.resize(row_bytes);
  for (int y = wanted.y; y < wanted.y + wanted.height; ++y) {
    decoder.read_row(static_cast<std::uint32_t>(y - unit.area.y), buffer_.data());
    const void* samples = ready_samples(page_, buffer_.data(), row_bytes, floats_);
    deliver(RegionPx{wanted.x, y, wanted.width, 1}, unit.plane,
            static_cast<const std::uint8_t*>(samples) + column * ready_bytes, row_samples, sink);
  }
}

}  // namespace fogline
