#pragma once

#include "pixels/block_source.h"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace fogline {

/// Rows of a picture from top to bottom: what PNG and JPEG give.
class RowReader {
 public:
  RowReader() = default;
  RowReader(const RowReader&) = delete;
  RowReader& operator=(const RowReader&) = delete;
  RowReader(RowReader&&) = delete;
  RowReader& operator=(RowReader&&) = delete;
  virtual ~RowReader() = default;

  /// Decodes the next row; the samples stay until the next call. Throws FileError.
  virtual const void* next_row() = 0;
};

/// Shape of the rows of a RowReader.
struct RowShape {
  int width = 0;
  int height = 0;
  SampleType type = SampleType::u8;
  int channels = 1;
  /// Samples a pixel, alpha included.
  int samples = 1;
};

using RowReaderFactory = std::function<std::unique_ptr<RowReader>()>;

/// A BlockSource over rows that come in order only. Goes on from where it stands; a step back
/// starts the file again.
class RowSource final : public BlockSource {
 public:
  RowSource(const RowShape& shape, RowReaderFactory open);

  void read_blocks(const RegionPx& region, const BlockSink& sink) override;
  [[nodiscard]] int rows_together() const override { return 1; }
  [[nodiscard]] int columns_together() const override { return shape_.width; }
  [[nodiscard]] bool random_access() const override { return false; }
  [[nodiscard]] std::size_t working_bytes() const override { return 0; }
  [[nodiscard]] std::unique_ptr<BlockSource> fork() const override;

 private:
  RowShape shape_;
  RowReaderFactory open_;
  std::unique_ptr<RowReader> reader_;
  int next_y_ = 0;
};

}  // namespace fogline
