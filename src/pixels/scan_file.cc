#include "pixels/scan_file.h"

#include "files/input_file.h"

#include <algorithm>
#include <stdexcept>
#include <utility>
#include <vector>

namespace fogline {

ScanFile::ScanFile(OpenedPicture picture)
    : picture_(std::move(picture)), own_curve_(picture_.curve), decoding_(decoding()) {}

Decoding ScanFile::decoding() const {
  Decoding result;
  result.curve = picture_.curve;
  result.channels = picture_.info.channels;
  result.top_code = picture_.top_code;
  if (picture_.sample_type != SampleType::f32) {
    result.tables = light_tables(picture_.curve, codes(), result.channels);
  }
  return result;
}

void ScanFile::set_transfer(const Transfer& transfer) {
  const bool needs_exponent = transfer.kind == TransferKind::power;
  if (needs_exponent && !(transfer.exponent.value_or(0.0) > 0.0)) {
    throw std::invalid_argument("a power transfer needs an exponent above 0");
  }
  if (transfer.kind == TransferKind::curve && own_curve_.sampled == nullptr) {
    refuse(picture_.info.file, Refusal::no_own_tone_curve);
  }
  if (transfer.kind == TransferKind::scanner &&
      (transfer.scanner == nullptr || transfer.scanner->channels < picture_.info.channels)) {
    throw std::invalid_argument("a scanner's transfer needs a curve for each channel");
  }
  picture_.curve.transfer = transfer;
  picture_.curve.sampled = own_curve_.sampled;
  picture_.info.transfer = transfer;
  picture_.info.transfer_known = true;
  if (transfer.source != TransferSource::assumed) {
    std::erase_if(picture_.info.cautions, [](const Caution& caution) {
      return caution.fact.kind == CautionKind::transfer_assumed;
    });
  }
  decoding_ = decoding();
}

double ScanFile::code_of(double light, int channel) const {
  return picture_.curve.code(light, channel);
}

ScanGrid ScanFile::survey(std::int64_t most_pixels, const Progress& progress) {
  return survey_blocks(*picture_.blocks, picture_.info, decoding_, codes(), most_pixels, progress);
}

Raster<float> ScanFile::read(const RegionPx& region, int reduction) {
  const ScanInfo& info = picture_.info;
  const bool inside = region.x >= 0 && region.y >= 0 && region.width > 0 && region.height > 0 &&
                      region.width <= info.width_px - region.x &&
                      region.height <= info.height_px - region.y;
  if (!inside || reduction < 1) {
    throw std::invalid_argument("a region to read must lie within the picture");
  }
  reduction = std::min(reduction, std::max(region.width, region.height));
  const int grid_width = (region.width - 1) / reduction + 1;
  const int grid_height = (region.height - 1) / reduction + 1;
  Raster<float> result(grid_width, grid_height, info.channels);
  reduce_region(*picture_.blocks, region, reduction, decoding_, nullptr, [&](const LightRow& row) {
    const std::uint64_t* light = row.light;
    float* out = result.row(row.grid_y);
    for (int x = 0; x < grid_width; ++x) {
      const int columns = std::min(reduction, region.width - x * reduction);
      const double pixels = static_cast<double>(columns) * static_cast<double>(row.stored_rows);
      const double scale = 1.0 / (full_light * pixels);
      for (int c = 0; c < info.channels; ++c) {
        *out++ = static_cast<float>(static_cast<double>(*light++) * scale);
      }
    }
  });
  return result;
}

}  // namespace fogline
