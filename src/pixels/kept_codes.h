#pragma once

#include "pixels/block_source.h"

#include <fogline/base/scan_source.h>

#include <cstddef>
#include <cstdint>
#include <memory>

namespace fogline {

/// Memory that kept codes may take: 21 Mpx in three channels of 16 bits. With the grid that is made
/// of them (37 MB then; 98 MB at most, of a picture whose codes take 84) and the libraries (about
/// 40 MB) the reading stays below 256 MB.
inline constexpr std::size_t most_kept_bytes = 126'000'000;

/// Codes of a picture in memory, as its one pass over the file brought them: what it is read from
/// when its tone curve changes. A picture that takes more than its room is thinned to every n-th
/// pixel along and across: that keeps the mean light of an area by any tone curve, which means of
/// codes would not.
class KeptCodes final : public BlockSource {
 public:
  KeptCodes(const ScanInfo& info, SampleType type, std::size_t most_bytes);

  /// Takes a block of the whole picture. Safe from several threads for blocks of different places.
  void keep(const Block& block);

  /// Stored pixels a kept one, along and across: 1 where all are kept.
  [[nodiscard]] int step() const { return step_; }
  [[nodiscard]] int width() const { return width_; }
  [[nodiscard]] int height() const { return height_; }
  [[nodiscard]] std::size_t bytes() const;

  void read_blocks(const RegionPx& region, const BlockSink& sink) override;
  [[nodiscard]] int rows_together() const override { return 1; }
  [[nodiscard]] int columns_together() const override { return width_; }
  [[nodiscard]] bool random_access() const override { return true; }
  [[nodiscard]] std::size_t working_bytes() const override { return 0; }
  [[nodiscard]] std::unique_ptr<BlockSource> fork() const override;

 private:
  KeptCodes(const KeptCodes& other, std::shared_ptr<std::uint8_t[]> samples);
  [[nodiscard]] std::size_t offset_of(int x, int y, int channel) const;

  SampleType type_;
  int channels_;
  int step_ = 1;
  int width_ = 0;
  int height_ = 0;
  std::shared_ptr<std::uint8_t[]> samples_;
};

}  // namespace fogline
