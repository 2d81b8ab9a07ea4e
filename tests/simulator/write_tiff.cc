#include "simulator/icc_profile.h"
#include "simulator/picture_files.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <tiffio.h>

namespace filmsim {
namespace {

void set_transfer_function(TIFF* tiff, const EncodingSettings& settings, int bits) {
  const std::size_t codes = std::size_t{1} << static_cast<unsigned>(bits);
  std::vector<std::uint16_t> table(codes);
  for (std::size_t i = 0; i < codes; ++i) {
    const double light =
        light_from_encoded(static_cast<double>(i) / static_cast<double>(codes - 1), settings);
    table[i] = static_cast<std::uint16_t>(std::lround(65535.0 * light));
  }
  if (settings.channels == 1) {
    TIFFSetField(tiff, TIFFTAG_TRANSFERFUNCTION, table.data());
  } else {
    TIFFSetField(tiff, TIFFTAG_TRANSFERFUNCTION, table.data(), table.data(), table.data());
  }
}

void set_tags(TIFF* tiff, const Picture& picture, const EncodingSettings& settings,
              double pixels_per_inch) {
  TIFFSetField(tiff, TIFFTAG_IMAGEWIDTH, static_cast<std::uint32_t>(picture.width));
  TIFFSetField(tiff, TIFFTAG_IMAGELENGTH, static_cast<std::uint32_t>(picture.height));
  TIFFSetField(tiff, TIFFTAG_SAMPLESPERPIXEL, static_cast<std::uint16_t>(picture.channels));
  TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, static_cast<std::uint16_t>(picture.bits));
  TIFFSetField(tiff, TIFFTAG_PHOTOMETRIC,
               picture.channels == 1 ? PHOTOMETRIC_MINISBLACK : PHOTOMETRIC_RGB);
  TIFFSetField(tiff, TIFFTAG_PLANARCONFIG, PLANARCONFIG_CONTIG);
  TIFFSetField(tiff, TIFFTAG_ORIENTATION, ORIENTATION_TOPLEFT);
  TIFFSetField(tiff, TIFFTAG_COMPRESSION,
               settings.compressed ? COMPRESSION_ADOBE_DEFLATE : COMPRESSION_NONE);
  if (settings.compressed) {
    TIFFSetField(tiff, TIFFTAG_PREDICTOR, PREDICTOR_HORIZONTAL);
  }
  TIFFSetField(tiff, TIFFTAG_ROWSPERSTRIP, static_cast<std::uint32_t>(64));
  if (pixels_per_inch > 0.0) {
    TIFFSetField(tiff, TIFFTAG_RESOLUTIONUNIT, RESUNIT_INCH);
    TIFFSetField(tiff, TIFFTAG_XRESOLUTION, pixels_per_inch);
    TIFFSetField(tiff, TIFFTAG_YRESOLUTION, pixels_per_inch);
  }
  if (settings.tone_told == ToneTold::kIccProfile) {
    const std::string profile = icc_profile(settings);
    TIFFSetField(tiff, TIFFTAG_ICCPROFILE, static_cast<std::uint32_t>(profile.size()),
                 profile.data());
  } else if (settings.tone_told == ToneTold::kFileTag) {
    set_transfer_function(tiff, settings, picture.bits);
  }
}

}  // namespace

void write_tiff(const Picture& picture, const EncodingSettings& settings, double pixels_per_inch,
                const std::string& path) {
  TIFF* tiff = TIFFOpen(path.c_str(), "w");
  if (tiff == nullptr) throw std::runtime_error("can't write " + path);
  set_tags(tiff, picture, settings, pixels_per_inch);
  const std::size_t row =
      static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.channels);
  bool good = true;
  std::vector<std::uint16_t> line(row);
  std::vector<std::uint8_t> bytes(row);
  for (int y = 0; y < picture.height && good; ++y) {
    const auto first = picture.codes.begin() + static_cast<std::ptrdiff_t>(row) * y;
    std::copy_n(first, row, line.begin());
    if (picture.bits == 8) {
      for (std::size_t i = 0; i < row; ++i) bytes[i] = static_cast<std::uint8_t>(line[i]);
    }
    void* data =
        picture.bits == 8 ? static_cast<void*>(bytes.data()) : static_cast<void*>(line.data());
    good = TIFFWriteScanline(tiff, data, static_cast<std::uint32_t>(y), 0) == 1;
  }
  TIFFClose(tiff);
  if (!good) throw std::runtime_error("writing failed: " + path);
}

}  // namespace filmsim
