#include "pixels/kept_codes.h"

#include <cstring>
#include <utility>

namespace fogline {

namespace {

std::size_t sample_bytes(SampleType type) {
  switch (type) {
    case SampleType::u8:
      return sizeof(std::uint8_t);
    case SampleType::u16:
      return sizeof(std::uint16_t);
    case SampleType::f32:
      break;
  }
  return sizeof(float);
}

/// Kept pixels of `stored` at one in `step`.
int thinned(int stored, int step) {
  return (stored - 1) / step + 1;
}

}  // namespace

KeptCodes::KeptCodes(const ScanInfo& info, SampleType type, std::size_t most_bytes)
    : type_(type), channels_(info.channels), width_(info.width_px), height_(info.height_px) {
  while (bytes() > most_bytes) {
    ++step_;
    width_ = thinned(info.width_px, step_);
    height_ = thinned(info.height_px, step_);
  }
  samples_ = std::make_shared_for_overwrite<std::uint8_t[]>(bytes());
}

KeptCodes::KeptCodes(const KeptCodes& other, std::shared_ptr<std::uint8_t[]> samples)
    : type_(other.type_),
      channels_(other.channels_),
      step_(other.step_),
      width_(other.width_),
      height_(other.height_),
      samples_(std::move(samples)) {}

std::size_t KeptCodes::bytes() const {
  return offset_of(0, height_, 0);
}

std::size_t KeptCodes::offset_of(int x, int y, int channel) const {
  const std::size_t pixel =
      static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) + static_cast<std::size_t>(x);
  return (pixel * static_cast<std::size_t>(channels_) + static_cast<std::size_t>(channel)) *
         sample_bytes(type_);
}

void KeptCodes::keep(const Block& block) {
  const std::size_t size = sample_bytes(type_);
  const std::size_t pixel_bytes = static_cast<std::size_t>(block.channels) * size;
  const auto* stored = static_cast<const std::uint8_t*>(block.samples);
  const auto stride = static_cast<std::ptrdiff_t>(size);
  const bool rows_alike =
      step_ == 1 && block.channels == channels_ && block.pixel_stride == block.channels;
  const int first_x = (block.area.x + step_ - 1) / step_;
  for (int y = 0; y < block.area.height; ++y) {
    const int picture_y = block.area.y + y;
    if (picture_y % step_ != 0) {
      continue;
    }
    const std::uint8_t* row = stored + y * block.row_stride * stride;
    if (rows_alike) {
      std::memcpy(samples_.get() + offset_of(block.area.x, picture_y, 0), row,
                  static_cast<std::size_t>(block.area.width) * pixel_bytes);
      continue;
    }
    for (int x = first_x; x * step_ < block.area.x + block.area.width; ++x) {
      const std::ptrdiff_t at = (x * step_ - block.area.x) * block.pixel_stride * stride;
      std::memcpy(samples_.get() + offset_of(x, picture_y / step_, block.first_channel), row + at,
                  pixel_bytes);
    }
  }
}

void KeptCodes::read_blocks(const RegionPx& region, const BlockSink& sink) {
  Block block;
  block.area = region;
  block.type = type_;
  block.channels = channels_;
  block.samples = samples_.get() + offset_of(region.x, region.y, 0);
  block.pixel_stride = channels_;
  block.row_stride = static_cast<std::ptrdiff_t>(width_) * channels_;
  sink(block);
}

std::unique_ptr<BlockSource> KeptCodes::fork() const {
  return std::unique_ptr<BlockSource>(new KeptCodes(*this, samples_));
}

}  // namespace fogline
