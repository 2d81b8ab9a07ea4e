#include "pixels/tiff_page.h"

#include "files/input_file.h"
#include "pixels/limits.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace fogline {

namespace {

/// Pages looked at: a scan has one, with a thumbnail, a preview and an infrared page four.
constexpr int most_pages = 256;
constexpr int most_sub_pages_a_page = 16;

constexpr std::uint16_t photometric_linear_raw = 34892;
constexpr std::uint16_t photometric_mosaic = 32803;

/// A row of the widest picture in three channels of 32 bits, with room for extra samples (bytes).
constexpr std::size_t largest_row_bytes = 32 << 20;

/// Extra samples beyond colour: alpha, infrared and some to spare.
constexpr int most_samples_a_pixel = 16;

TiffPage describe_page(TIFF* tiff, std::uint64_t offset) {
  TiffPage page;
  page.directory_offset = offset;
  page.width = tiff_long(tiff, TIFFTAG_IMAGEWIDTH, 0);
  page.height = tiff_long(tiff, TIFFTAG_IMAGELENGTH, 0);
  page.bits = tiff_short(tiff, TIFFTAG_BITSPERSAMPLE, 1);
  page.samples = tiff_short(tiff, TIFFTAG_SAMPLESPERPIXEL, 1);
  page.sample_format = tiff_short(tiff, TIFFTAG_SAMPLEFORMAT, SAMPLEFORMAT_UINT);
  page.compression = tiff_short(tiff, TIFFTAG_COMPRESSION, COMPRESSION_NONE);
  page.fill_order = tiff_short(tiff, TIFFTAG_FILLORDER, FILLORDER_MSB2LSB);
  std::uint16_t photometric = 0;
  page.has_photometric = TIFFGetField(tiff, TIFFTAG_PHOTOMETRIC, &photometric) == 1;
  page.photometric = page.has_photometric ? photometric
                     : page.samples >= 3  ? std::uint16_t{PHOTOMETRIC_RGB}
                                          : std::uint16_t{PHOTOMETRIC_MINISBLACK};
  page.separate_planes =
      page.samples > 1 && tiff_short(tiff, TIFFTAG_PLANARCONFIG, 1) == PLANARCONFIG_SEPARATE;
  page.tiled = TIFFIsTiled(tiff) != 0;
  if (page.tiled) {
    page.unit_width = tiff_long(tiff, TIFFTAG_TILEWIDTH, 0);
    page.unit_height = tiff_long(tiff, TIFFTAG_TILELENGTH, 0);
  } else {
    page.unit_width = page.width;
    page.unit_height = std::min(tiff_long(tiff, TIFFTAG_ROWSPERSTRIP, page.height), page.height);
  }
  const std::uint32_t kind = tiff_long(tiff, TIFFTAG_SUBFILETYPE, 0);
  const std::uint16_t old_kind = tiff_short(tiff, TIFFTAG_OSUBFILETYPE, 0);
  page.secondary =
      (kind & (FILETYPE_REDUCEDIMAGE | FILETYPE_MASK)) != 0 || old_kind == OFILETYPE_REDUCEDIMAGE;
  return page;
}

/// The stated largest value of float samples, where it is not 1.
double float_scale_of(TIFF* tiff, const TiffPage& page) {
  double largest = 1.0;
  const bool stated = page.is_float() && TIFFGetField(tiff, TIFFTAG_SMAXSAMPLEVALUE, &largest) == 1;
  return stated && largest > 0.0 && std::isfinite(largest) ? largest : 1.0;
}

void add_sub_pages(TIFF* tiff, std::vector<std::uint64_t>& offsets) {
  std::uint16_t count = 0;
  std::uint64_t* list = nullptr;
  if (TIFFGetField(tiff, TIFFTAG_SUBIFD, &count, &list) != 1 || list == nullptr) {
    return;
  }
  const int used = std::min<int>(count, most_sub_pages_a_page);
  offsets.insert(offsets.end(), list, list + used);
}

std::optional<Refusal> refusal_of_photometric(const TiffPage& page) {
  switch (page.photometric) {
    case PHOTOMETRIC_MINISWHITE:
    case PHOTOMETRIC_MINISBLACK:
    case PHOTOMETRIC_RGB:
    case photometric_linear_raw:
      return std::nullopt;
    case PHOTOMETRIC_YCBCR:
      return page.compression == COMPRESSION_JPEG && !page.separate_planes
                 ? std::nullopt
                 : std::optional(Refusal::rare_colour_difference);
    case PHOTOMETRIC_PALETTE:
      return Refusal::palette;
    case PHOTOMETRIC_SEPARATED:
      return Refusal::cmyk;
    case PHOTOMETRIC_CIELAB:
    case PHOTOMETRIC_ICCLAB:
    case PHOTOMETRIC_ITULAB:
      return Refusal::cielab;
    case PHOTOMETRIC_MASK:
      return Refusal::mask_only;
    case photometric_mosaic:
      return Refusal::raw_mosaic;
    default:
      return Refusal::not_grey_or_rgb;
  }
}

std::optional<Refusal> refusal_of_samples(const TiffPage& page) {
  if (page.bits == 1) {
    return Refusal::one_bit;
  }
  const bool is_integer =
      page.sample_format == SAMPLEFORMAT_UINT || page.sample_format == SAMPLEFORMAT_VOID;
  const bool known_integer = is_integer && (page.bits == 8 || page.bits == 16 || page.bits == 32);
  if (!known_integer && !page.is_float()) {
    return Refusal::odd_sample_bits;
  }
  const bool colour = page.photometric == PHOTOMETRIC_RGB || page.photometric == PHOTOMETRIC_YCBCR;
  if ((colour && page.samples < 3) || page.samples < 1 || page.samples > most_samples_a_pixel) {
    return Refusal::odd_sample_count;
  }
  return std::nullopt;
}

}  // namespace

int TiffPage::channels() const {
  const bool colour = photometric == PHOTOMETRIC_RGB || photometric == PHOTOMETRIC_YCBCR ||
                      (photometric == photometric_linear_raw && samples >= 3);
  return colour ? 3 : 1;
}

bool TiffPage::is_float() const {
  return sample_format == SAMPLEFORMAT_IEEEFP && (bits == 16 || bits == 32);
}

SampleType TiffPage::sample_type() const {
  if (is_float() || bits == 32) {
    return SampleType::f32;
  }
  return bits == 8 ? SampleType::u8 : SampleType::u16;
}

TiffPageChoice choose_tiff_page(TiffHandle& handle, const std::string& path) {
  TIFF* tiff = handle.get();
  std::vector<TiffPage> pages;
  std::vector<std::uint64_t> sub_pages;
  do {
    pages.push_back(describe_page(tiff, TIFFCurrentDirOffset(tiff)));
    add_sub_pages(tiff, sub_pages);
  } while (pages.size() < most_pages && TIFFReadDirectory(tiff) != 0);
  if (sub_pages.size() > most_pages) {
    sub_pages.resize(most_pages);
  }
  for (const std::uint64_t offset : sub_pages) {
    if (TIFFSetSubDirectory(tiff, offset) != 0) {
      pages.push_back(describe_page(tiff, offset));
    }
  }
  handle.forget_error();
  const auto area = [](const TiffPage& page) {
    return static_cast<std::uint64_t>(page.width) * page.height;
  };
  const auto best =
      std::max_element(pages.begin(), pages.end(), [&](const TiffPage& a, const TiffPage& b) {
        return a.secondary != b.secondary ? a.secondary : area(a) < area(b);
      });
  TiffPageChoice choice;
  choice.page = *best;
  choice.full_pages = static_cast<int>(std::count_if(
      pages.begin(), pages.end(), [](const TiffPage& page) { return !page.secondary; }));
  if (choice.page.width == 0 || choice.page.height == 0) {
    refuse(path, Refusal::tiff_without_size);
  }
  handle.go_to(choice.page.directory_offset);
  choice.page.float_scale = float_scale_of(tiff, choice.page);
  return choice;
}

void check_tiff_page(const TiffPage& page, const std::string& path, std::uint64_t file_size) {
  std::optional<Refusal> refusal = refusal_of_photometric(page);
  refusal = refusal ? refusal : refusal_of_samples(page);
  if (refusal) {
    refuse(path, *refusal);
  }
  if (TIFFIsCODECConfigured(page.compression) == 0 || page.compression == COMPRESSION_OJPEG) {
    refuse(path, Refusal::unknown_compression, {static_cast<double>(page.compression)});
  }
  check_picture_size(path, page.width, page.height);
  if (page.unit_width == 0 || page.unit_height == 0) {
    refuse(path, Refusal::strips_without_size);
  }
  if (page.unit_width > largest_side_px + 65536U || page.unit_height > largest_side_px + 65536U) {
    refuse(path, Refusal::tiles_beyond_reason);
  }
  if (page.unit_row_bytes() > largest_row_bytes) {
    refuse(path, Refusal::rows_beyond_reason);
  }
  const std::uint64_t stored_planes = page.separate_planes ? page.samples : 1;
  const std::uint64_t decoded =
      static_cast<std::uint64_t>(page.width) * page.height * page.pixel_bytes() * stored_planes;
  check_decoded_size(path, decoded, file_size,
                     page.compression == COMPRESSION_NONE ? 1 : largest_compression_ratio);
}

}  // namespace fogline
