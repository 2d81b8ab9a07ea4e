#pragma once

#include <fogline/base/raster.h>

#include <cstddef>
#include <cstdint>
#include <functional>
#include <memory>

namespace fogline {

/// Type of the samples of a block. Wider or rarer samples (32-bit unsigned, 16-bit float) are
/// handed over as float, 0 to 1.
enum class SampleType { u8, u16, f32 };

/// A decoded rectangle of stored codes, inverted already where the file stores white as 0.
struct Block {
  RegionPx area;
  SampleType type = SampleType::u8;
  /// Channels in this block: all of them interleaved (`first_channel` 0), or a single one.
  int first_channel = 0;
  int channels = 1;
  /// Sample of the first channel of the top left pixel; strides count samples.
  const void* samples = nullptr;
  std::ptrdiff_t pixel_stride = 1;
  std::ptrdiff_t row_stride = 0;
};

using BlockSink = std::function<void(const Block&)>;

/// Decodes stored codes, region by region, and knows nothing of light. Not safe for use by two
/// threads at once: each takes its own `fork`.
class BlockSource {
 public:
  BlockSource() = default;
  BlockSource(const BlockSource&) = delete;
  BlockSource& operator=(const BlockSource&) = delete;
  BlockSource(BlockSource&&) = delete;
  BlockSource& operator=(BlockSource&&) = delete;
  virtual ~BlockSource() = default;

  /// Hands every pixel of `region` (within the picture) to `sink`, each channel once, in blocks of
  /// any shape inside the region. Throws FileError.
  virtual void read_blocks(const RegionPx& region, const BlockSink& sink) = 0;

  /// Rows that are decoded together: reading in multiples of it, from a multiple on, decodes
  /// nothing twice.
  [[nodiscard]] virtual int rows_together() const = 0;

  /// Columns that are decoded together, likewise: a tile's width, else the picture's.
  [[nodiscard]] virtual int columns_together() const = 0;

  /// True where any row can be had without decoding all rows above it.
  [[nodiscard]] virtual bool random_access() const = 0;

  /// Bytes one reader holds while it decodes.
  [[nodiscard]] virtual std::size_t working_bytes() const = 0;

  /// Another reader of the same picture, for another thread.
  [[nodiscard]] virtual std::unique_ptr<BlockSource> fork() const = 0;
};

/// True where the two rectangles have a pixel in common; `common` is set to it.
inline bool intersect(const RegionPx& a, const RegionPx& b, RegionPx& common) {
  const int left = a.x > b.x ? a.x : b.x;
  const int top = a.y > b.y ? a.y : b.y;
  const int right = a.x + a.width < b.x + b.width ? a.x + a.width : b.x + b.width;
  const int bottom = a.y + a.height < b.y + b.height ? a.y + a.height : b.y + b.height;
  common = RegionPx{left, top, right - left, bottom - top};
  return right > left && bottom > top;
}

}  // namespace fogline
