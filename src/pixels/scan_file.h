#pragma once

#include "pixels/block_source.h"
#include "pixels/kept_codes.h"
#include "pixels/light_sums.h"
#include "pixels/tone_curve.h"

#include <fogline/base/scan_source.h>

#include <memory>
#include <string>
#include <vector>

namespace fogline {

/// Codes from here on are as good as clipped. Pictures of fewer bits that were stretched to 16 end
/// below the full code: at 65280 (8 bits), 65520 (12) or 65532 (14).
constexpr std::uint32_t top_code_of(int bits) {
  return bits == 8 ? 255 : 65280;
}

/// A picture as its reader found it: what it says of itself, its curve, and its codes.
struct OpenedPicture {
  ScanInfo info;
  ToneCurve curve;
  SampleType sample_type = SampleType::u8;
  /// Codes from here on are clipped: near the full code unless the file names a white level.
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
  ScanGrid survey(const SurveyPlan& plan, const Progress& progress) override;

 private:
  /// A grid that a plan foresaw.
  struct KeptGrid {
    Transfer transfer;
    ScanGrid grid;
  };

  void check(const Transfer& transfer) const;
  [[nodiscard]] ToneCurve curve_of(const Transfer& transfer) const;
  [[nodiscard]] Decoding decoding(const std::vector<Transfer>& transfers) const;
  [[nodiscard]] ScanGrid survey_file(const SurveyPlan& plan, const Progress& progress);
  [[nodiscard]] ScanGrid survey_kept_codes(std::int64_t most_pixels, const Progress& progress);

  OpenedPicture picture_;
  /// The curve the file itself names, for a later set_transfer to TransferKind::curve.
  ToneCurve own_curve_;
  std::vector<KeptGrid> kept_grids_;
  std::unique_ptr<KeptCodes> kept_codes_;
};

/// One pass over all blocks: a grid for each reading of the codes, with clip bits. On as many
/// threads as memory and processors allow where the source gives random access. `keep`, where not
/// null, takes all codes.
std::vector<ScanGrid> survey_blocks(BlockSource& source, const ScanInfo& info,
                                    const Decoding& decoding, std::int64_t most_pixels,
                                    KeptCodes* keep, const Progress& progress);

/// The smallest whole reduction with ceil(width / r) * ceil(height / r) <= most_pixels.
int reduction_for(int width_px, int height_px, std::int64_t most_pixels);

}  // namespace fogline
