#pragma once

#include "pixels/block_source.h"
#include "pixels/tiff_handle.h"

#include <fogline/base/raster.h>

#include <cstddef>
#include <cstdint>
#include <string>

namespace fogline {

/// How one picture of a TIFF is laid out.
struct TiffPage {
  std::uint64_t directory_offset = 0;
  std::uint32_t width = 0;
  std::uint32_t height = 0;
  std::uint16_t bits = 1;
  std::uint16_t samples = 1;
  std::uint16_t sample_format = 1;
  std::uint16_t photometric = 0;
  bool has_photometric = false;
  std::uint16_t compression = 1;
  std::uint16_t fill_order = 1;
  bool separate_planes = false;
  bool tiled = false;
  /// A thumbnail, preview or mask of another page.
  bool secondary = false;
  /// Size of a tile, or of a full strip.
  std::uint32_t unit_width = 0;
  std::uint32_t unit_height = 0;
  /// Float samples are divided by this.
  double float_scale = 1.0;

  /// Colour channels used: 1 or 3.
  [[nodiscard]] int channels() const;
  [[nodiscard]] bool is_float() const;
  [[nodiscard]] SampleType sample_type() const;
  /// Samples a pixel of one stored plane has.
  [[nodiscard]] int samples_together() const { return separate_planes ? 1 : samples; }
  [[nodiscard]] std::size_t pixel_bytes() const {
    return static_cast<std::size_t>(samples_together()) * (bits / 8U);
  }
  [[nodiscard]] std::size_t unit_row_bytes() const { return unit_width * pixel_bytes(); }
  [[nodiscard]] std::uint64_t unit_bytes() const {
    return static_cast<std::uint64_t>(unit_row_bytes()) * unit_height;
  }
};

/// The page a scan is read from.
struct TiffPageChoice {
  TiffPage page;
  /// Full pages in the file, this one included.
  int full_pages = 1;
};

/// Finds the largest page that is no thumbnail, preview or mask, among the chain of directories
/// and their sub-directories (linear DNG), and makes it current. Throws FileError.
TiffPageChoice choose_tiff_page(TiffHandle& handle, const std::string& path);

/// Throws FileError with what to do where the page is not one a scan can be read from: palette,
/// one bit, CMYK, Lab, raw mosaic, sizes beyond reason, codecs that are not installed.
void check_tiff_page(const TiffPage& page, const std::string& path, std::uint64_t file_size);

}  // namespace fogline
