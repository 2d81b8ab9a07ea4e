#pragma once

#include "files/input_file.h"
#include "pixels/block_source.h"
#include "pixels/tiff_handle.h"
#include "pixels/tiff_page.h"
#include "pixels/tiff_unit_rows.h"

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace fogline {

/// Codes of one page of a TIFF. Three ways, by layout: uncompressed samples are read from the file
/// directly, only the rows and columns wanted; small strips and tiles are decoded whole by libtiff;
/// large ones row by row (TiffUnitRows).
class TiffSource final : public BlockSource {
 public:
  /// The page must have passed check_tiff_page. Throws FileError.
  TiffSource(const std::string& path, const TiffPage& page);
  ~TiffSource() override;
  TiffSource(const TiffSource&) = delete;
  TiffSource& operator=(const TiffSource&) = delete;
  TiffSource(TiffSource&&) = delete;
  TiffSource& operator=(TiffSource&&) = delete;

  void read_blocks(const RegionPx& region, const BlockSink& sink) override;
  [[nodiscard]] int rows_together() const override;
  [[nodiscard]] int columns_together() const override;
  [[nodiscard]] bool random_access() const override { return way_ != Way::by_rows; }
  [[nodiscard]] std::size_t working_bytes() const override;
  [[nodiscard]] std::unique_ptr<BlockSource> fork() const override;

 private:
  enum class Way { direct, whole_units, by_rows };
  /// A strip or tile of one plane, and where it lies in the picture.
  struct Unit {
    std::uint32_t index = 0;
    int plane = 0;
    RegionPx area;
  };

  void read_unit(const Unit& unit, const RegionPx& wanted, const BlockSink& sink);
  void read_direct(const Unit& unit, const RegionPx& wanted, const BlockSink& sink);
  void read_whole(const Unit& unit, const RegionPx& wanted, const BlockSink& sink);
  void read_rows(const Unit& unit, const RegionPx& wanted, const BlockSink& sink);
  void decode_unit(const Unit& unit);
  TiffUnitRows& decoder_of(const Unit& unit);
  void deliver(const RegionPx& area, int plane, const void* samples, std::size_t row_samples,
               const BlockSink& sink) const;

  InputFile file_;
  TiffPage page_;
  TiffHandle handle_;
  Way way_ = Way::direct;
  std::vector<std::uint8_t> buffer_;
  std::vector<float> floats_;
  /// The unit that `buffer_` holds decoded, if any (whole_units).
  std::int64_t held_unit_ = -1;
  const void* held_samples_ = nullptr;
  /// Decoders under way, by unit index (by_rows).
  struct RowDecoder {
    std::uint32_t unit = 0;
    int y = 0;
    std::unique_ptr<TiffUnitRows> rows;
  };
  std::vector<RowDecoder> decoders_;
};

}  // namespace fogline
