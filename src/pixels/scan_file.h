#pragma once

#include "pixels/block_source.h"
#include "pixels/light_sums.h"
#include "pixels/tone_curve.h"

#include <fogline/base/scan_source.h>

#include <memory>
#include <string>

namespace fogline {

/// A picture as its reader found it: what it says of itself, its curve, and its codes.
struct OpenedPicture {
  ScanInfo info;
  ToneCurve curve;
  SampleType sample_type = SampleType::u8;
  /// Codes from here on are clipped; the full code unless the file names a white level.
  std::uint32_t top_code = 255;
  std::unique_ptr<BlockSource> blocks;
};

/// The ScanSource of every file format: codes from a BlockSource, light by a ToneCurve.
class ScanFile final : public ScanSource {
 public:
  explicit ScanFile(OpenedPicture picture);

  [[nodiscard]] const ScanInfo& info() const override { return picture_.info; }
  void set_transfer(const Transfer& transfer) override;
  [[nodiscard]] double code_of(double light, int channel) const override;
  ScanGrid survey(std::int64_t most_pixels, const Progress& progress) override;
  Raster<float> read(const RegionPx& region, int reduction) override;

 private:
  [[nodiscard]] Decoding decoding() const;
  [[nodiscard]] int codes() const { return picture_.sample_type == SampleType::u8 ? 256 : 65536; }

  OpenedPicture picture_;
  /// The curve the file itself names, for a later set_transfer to TransferKind::curve.
  ToneCurve own_curve_;
  Decoding decoding_;
};

/// One pass over all blocks: grid, clip bits, histograms. On as many threads as memory and
/// processors allow where the source gives random access.
ScanGrid survey_blocks(BlockSource& source, const ScanInfo& info, const Decoding& decoding,
                       int codes, std::int64_t most_pixels, const Progress& progress);

/// The smallest whole reduction with ceil(width / r) * ceil(height / r) <= most_pixels.
int reduction_for(int width_px, int height_px, std::int64_t most_pixels);

}  // namespace fogline
