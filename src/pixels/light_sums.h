#pragma once

#include "pixels/block_source.h"
#include "pixels/tone_curve.h"

#include <fogline/base/quantity.h>
#include <fogline/base/raster.h>

#include <cstdint>
#include <functional>
#include <vector>

namespace fogline {

/// Memory one reader's sums may take: several tile rows of usual scans, a small part of the 256 MB
/// that a reading may keep resident.
inline constexpr std::int64_t light_sums_budget_bytes = 16 << 20;

/// A sum of light and a count of clipped pixels.
inline constexpr std::int64_t light_sum_bytes_a_sample =
    sizeof(std::uint64_t) + sizeof(std::uint32_t);

/// One tone curve, ready for whole samples.
struct LightReading {
  ToneCurve curve;
  LightTables tables;
};

/// What turns the codes of one picture into light: by one tone curve, or by several at once.
struct Decoding {
  std::vector<LightReading> readings;
  /// Codes from here on are clipped (full sensor range or the file's white level).
  std::uint32_t top_code = 255;
  int channels = 1;
};

/// One finished grid row: sums of fixed-point light for each reading and counts of clipped pixels,
/// channels interleaved, and how many stored rows went in.
struct LightRow {
  int grid_y = 0;
  int stored_rows = 0;
  std::vector<const std::uint64_t*> light;
  const std::uint32_t* clipped = nullptr;
};

using LightRowSink = std::function<void(const LightRow&)>;

/// Sums of light over the cells of a region's grid, for a sliding window of grid rows: rows are
/// handed on and forgotten as soon as all their stored rows have come in, so the whole picture is
/// never held. Whole-number sums: the order in which blocks come doesn't change a bit.
class LightSums {
 public:
  LightSums(const RegionPx& region, int reduction, const Decoding& decoding);

  [[nodiscard]] int grid_width() const { return grid_width_; }

  /// Makes room for stored rows up to (not including) `y_end` of the picture.
  void reserve_rows(int y_end);

  /// Adds a block that lies within the region and the rows made room for.
  void add(const Block& block);

  /// Hands on every grid row whose stored rows all lie above `y_end`.
  void finish_rows(int y_end, const LightRowSink& sink);

 private:
  template <typename Sample, int Channels>
  void add_samples(const Block& block);
  void add_float(const Block& block);
  [[nodiscard]] std::size_t row_offset(int grid_y) const;

  RegionPx region_;
  int reduction_;
  const Decoding& decoding_;
  int grid_width_;
  int first_row_ = 0;
  int rows_ = 0;
  /// One for each reading.
  std::vector<std::vector<std::uint64_t>> light_;
  std::vector<std::uint32_t> clipped_;
};

/// Reads a region piece by piece, hands on its grid rows from top to bottom, and its blocks, in any
/// order, to `codes` where that isn't empty.
void reduce_region(BlockSource& source, const RegionPx& region, int reduction,
                   const Decoding& decoding, const LightRowSink& sink, const BlockSink& codes);

}  // namespace fogline
