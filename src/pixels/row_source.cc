#include "pixels/row_source.h"

#include <utility>

namespace fogline {

RowSource::RowSource(const RowShape& shape, RowReaderFactory open)
    : shape_(shape), open_(std::move(open)) {}

void RowSource::read_blocks(const RegionPx& region, const BlockSink& sink) {
  if (reader_ == nullptr || region.y < next_y_) {
    reader_.reset();
    reader_ = open_();
    next_y_ = 0;
  }
  const std::size_t sample_bytes = shape_.type == SampleType::u8 ? 1 : 2;
  const std::size_t column =
      static_cast<std::size_t>(region.x) * static_cast<std::size_t>(shape_.samples) * sample_bytes;
  try {
    for (; next_y_ < region.y + region.height; ++next_y_) {
      const void* row = reader_->next_row();
      if (next_y_ < region.y) {
        continue;
      }
      Block block;
      block.area = RegionPx{region.x, next_y_, region.width, 1};
      block.type = shape_.type;
      block.channels = shape_.channels;
      block.samples = static_cast<const std::uint8_t*>(row) + column;
      block.pixel_stride = shape_.samples;
      sink(block);
    }
  } catch (...) {
    // A decoder that failed is in no state to go on from.
    reader_.reset();
    throw;
  }
  if (next_y_ == shape_.height) {
    reader_.reset();
  }
}

std::unique_ptr<BlockSource> RowSource::fork() const {
  return std::make_unique<RowSource>(shape_, open_);
}

}  // namespace fogline
