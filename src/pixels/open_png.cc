#include "pixels/limits.h"
#include "pixels/open_picture.h"
#include "pixels/png_reader.h"
#include "pixels/row_source.h"
#include "pixels/scan_notes.h"

#include <memory>
#include <string>
#include <utility>

namespace fogline {

namespace {

constexpr double mm_per_m = 1000.0;

/// Gammas that a PNG can mean (its gAMA is the encoding power).
constexpr double least_gamma = 0.1;
constexpr double largest_gamma = 5.0;
constexpr double linear_tolerance = 1e-3;

void decide_transfer(OpenedPicture& picture, const PngHeader& header) {
  const bool profiled = !header.profile.empty() &&
                        take_profile(picture, header.profile.data(), header.profile.size());
  if (profiled) {
    return;
  }
  Transfer& transfer = picture.curve.transfer;
  transfer.source = TransferSource::file_tag;
  if (header.says_srgb) {
    transfer.kind = TransferKind::srgb;
  } else if (header.gamma && *header.gamma > least_gamma && *header.gamma < largest_gamma) {
    const double exponent = 1.0 / *header.gamma;
    const bool linear = exponent > 1.0 - linear_tolerance && exponent < 1.0 + linear_tolerance;
    transfer.kind = linear ? TransferKind::linear : TransferKind::power;
    if (!linear) {
      transfer.exponent = exponent;
    }
  } else {
    assume_transfer(picture, false);
  }
}

void check_header(const std::string& path, const PngHeader& header) {
  if (header.palette || header.bits < 8) {
    refuse(path, header.palette ? Refusal::palette : Refusal::few_bits);
  }
  if (header.animated) {
    refuse(path, Refusal::animation);
  }
  check_picture_size(path, header.width, header.height);
  const std::uint64_t decoded = header.row_bytes() * header.height;
  check_decoded_size(path, decoded, header.file_bytes, largest_compression_ratio);
  if (header.interlaced && decoded > largest_interlaced_bytes) {
    refuse(path, Refusal::huge_interlaced);
  }
}

}  // namespace

OpenedPicture open_png(const std::string& path) {
  const PngHeader header = read_png_header(path);
  check_header(path, header);
  OpenedPicture picture;
  ScanInfo& info = picture.info;
  info.file = path;
  info.width_px = static_cast<int>(header.width);
  info.height_px = static_cast<int>(header.height);
  info.bits = header.bits;
  info.samples_per_pixel = header.samples;
  info.channels = header.samples >= 3 ? 3 : 1;
  picture.sample_type = header.bits == 8 ? SampleType::u8 : SampleType::u16;
  picture.top_code = top_code_of(header.bits);
  if (header.samples != info.channels) {
    add_caution(info, CautionKind::transparency_unused, Severity::note);
  }
  if (header.x_per_m && header.y_per_m) {
    note_resolution(info, *header.x_per_m / mm_per_m, *header.y_per_m / mm_per_m);
  }
  decide_transfer(picture, header);
  const RowShape shape{info.width_px, info.height_px, picture.sample_type, info.channels,
                       header.samples};
  picture.blocks = std::make_unique<RowSource>(shape, [path] { return open_png_rows(path); });
  return picture;
}

}  // namespace fogline
