// PNG and JPEG: what they say of themselves, and the pixels.

#include "base/refusal_of.h"
#include "pixels/encode_picture.h"

#include <fogline/pixels/open_scan.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <memory>

#include <gtest/gtest.h>
#include <png.h>
// jpeglib.h needs <cstdio> before it.
#include "pixels/exact_light.h"
#include "pixels/test_files.h"

#include <jpeglib.h>

namespace fogline {
namespace {

using test::TempFolder;

OpenOptions linear() {
  return OpenOptions{Transfer{TransferKind::linear, std::nullopt, TransferSource::option}};
}

bool has_caution(const ScanInfo& info, CautionKind kind) {
  return std::any_of(info.cautions.begin(), info.cautions.end(),
                     [&](const Caution& caution) { return caution.fact.kind == kind; });
}

struct PngSpec {
  int bits = 16;
  int color = PNG_COLOR_TYPE_RGB;
  bool interlaced = false;
  std::function<void(png_structp, png_infop)> more;
};

constexpr int width = 37;
constexpr int height = 29;

void write_png(const std::string& path, const PngSpec& spec) {
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file(std::fopen(path.c_str(), "wb"),
                                                             std::fclose);
  png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, nullptr);
  png_infop info = png_create_info_struct(png);
  png_init_io(png, file.get());
  png_set_IHDR(png, info, width, height, spec.bits, spec.color,
               spec.interlaced ? PNG_INTERLACE_ADAM7 : PNG_INTERLACE_NONE,
               PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  if (spec.more) {
    spec.more(png, info);
  }
  png_write_info(png, info);
  const int samples = png_get_channels(png, info);
  std::vector<std::vector<std::uint8_t>> rows;
  std::vector<png_bytep> pointers;
  for (int y = 0; y < height; ++y) {
    auto& row = rows.emplace_back();
    for (int x = 0; x < width; ++x) {
      for (int c = 0; c < samples; ++c) {
        const std::uint16_t code = test::test_code(x, y, c);
        row.push_back(static_cast<std::uint8_t>(code >> 8U));
        if (spec.bits == 16) {
          row.push_back(static_cast<std::uint8_t>(code & 0xFFU));
        }
      }
    }
  }
  for (auto& row : rows) {
    pointers.push_back(row.data());
  }
  png_write_image(png, pointers.data());
  png_write_end(png, info);
  png_destroy_write_struct(&png, &info);
}

TEST(Png, EveryKindGivesThePicture) {
  const TempFolder folder;
  const std::string path = folder.file("scan.png");
  for (const int bits : {8, 16}) {
    for (const int color : {PNG_COLOR_TYPE_GRAY, PNG_COLOR_TYPE_RGB, PNG_COLOR_TYPE_GRAY_ALPHA,
                            PNG_COLOR_TYPE_RGB_ALPHA}) {
      for (const bool interlaced : {false, true}) {
        write_png(path, PngSpec{bits, color, interlaced, nullptr});
        const auto scan = open_scan(path, linear());
        const int channels = (color & PNG_COLOR_MASK_COLOR) != 0 ? 3 : 1;
        ASSERT_EQ(scan->info().channels, channels);
        ASSERT_EQ(scan->info().bits, bits);
        EXPECT_EQ(has_caution(scan->info(), CautionKind::transparency_unused),
                  (color & PNG_COLOR_MASK_ALPHA) != 0);
        EXPECT_FALSE(scan->info().lossy);
        const auto light = test::exact_light(path, linear(), RegionPx{2, 3, width - 2, height - 3});
        for (int y = 3; y < height; ++y) {
          for (int x = 2; x < width; ++x) {
            const int code = test::test_code(x, y, channels - 1);
            const double share = bits == 8 ? (code >> 8) / 255.0 : code / 65535.0;
            ASSERT_NEAR(light.at(x - 2, y - 3, channels - 1), share, 1e-7);
          }
        }
        // A second survey starts the file again.
        EXPECT_EQ(scan->survey({1000}, {}).light.root_codes().samples(),
                  scan->survey({1000}, {}).light.root_codes().samples());
      }
    }
  }
}

TEST(Png, ToneAndResolution) {
  const TempFolder folder;
  const std::string path = folder.file("scan.png");
  PngSpec spec;
  write_png(path, spec);
  EXPECT_FALSE(open_scan(path, {})->info().transfer_known);
  spec.more = [](png_structp png, png_infop info) {
    png_set_sRGB(png, info, PNG_sRGB_INTENT_RELATIVE);
    png_set_pHYs(png, info, 188976, 188976, PNG_RESOLUTION_METER);
  };
  write_png(path, spec);
  auto scan = open_scan(path, {});
  EXPECT_EQ(scan->info().transfer.kind, TransferKind::srgb);
  EXPECT_EQ(scan->info().transfer.source, TransferSource::file_tag);
  EXPECT_NEAR(scan->info().tag_pixels_per_mm.value_or(0.0), 188.976, 1e-9);
  spec.more = [](png_structp png, png_infop info) {
    png_set_gAMA_fixed(png, info, 50000);
    png_set_pHYs(png, info, 188976, 100000, PNG_RESOLUTION_METER);
  };
  write_png(path, spec);
  scan = open_scan(path, {});
  EXPECT_EQ(scan->info().transfer.kind, TransferKind::power);
  EXPECT_NEAR(scan->info().transfer.exponent.value_or(0.0), 2.0, 1e-6);
  EXPECT_FALSE(scan->info().tag_pixels_per_mm.has_value());
  EXPECT_TRUE(has_caution(scan->info(), CautionKind::resolution_tag_odd));
  spec.more = [](png_structp png, png_infop info) { png_set_gAMA_fixed(png, info, 100000); };
  write_png(path, spec);
  scan = open_scan(path, {});
  EXPECT_EQ(scan->info().transfer.kind, TransferKind::linear);
  EXPECT_TRUE(scan->info().transfer_known);
}

TEST(Png, PaletteIsRefused) {
  const TempFolder folder;
  const std::string path = folder.file("scan.png");
  PngSpec spec;
  spec.bits = 8;
  spec.color = PNG_COLOR_TYPE_PALETTE;
  spec.more = [](png_structp png, png_infop info) {
    const std::vector<png_color> colors(256);
    png_set_PLTE(png, info, colors.data(), 256);
  };
  write_png(path, spec);
  EXPECT_EQ(test::kind_of_refusal([&] { open_scan(path, {}); }), Refusal::palette);
}

Raster<std::uint8_t> smooth_picture(int channels) {
  Raster<std::uint8_t> picture(width, height, channels);
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      for (int c = 0; c < channels; ++c) {
        picture.at(x, y, c) = static_cast<std::uint8_t>(40 + 4 * x + 2 * y);
      }
    }
  }
  return picture;
}

void save(const std::string& path, const std::vector<std::uint8_t>& bytes) {
  test::write_bytes(path, {bytes.begin(), bytes.end()});
}

TEST(EncodePicture, PngReadsBackExactly) {
  const TempFolder folder;
  const std::string path = folder.file("page.png");
  for (const int channels : {1, 3}) {
    const auto picture = smooth_picture(channels);
    save(path, encode_png(picture));
    const auto light = test::exact_light(path, linear(), RegionPx{0, 0, width, height});
    ASSERT_EQ(light.channels(), channels);
    for (std::size_t i = 0; i < light.samples().size(); ++i) {
      ASSERT_EQ(std::lround(light.samples()[i] * 255.0F), picture.samples()[i]);
    }
  }
}

TEST(EncodePicture, JpegReadsBackNearly) {
  const TempFolder folder;
  const std::string path = folder.file("page.jpg");
  for (const int channels : {1, 3}) {
    const auto picture = smooth_picture(channels);
    const auto fine = encode_jpeg(picture, 95);
    EXPECT_LT(encode_jpeg(picture, 20).size(), fine.size());
    save(path, fine);
    const auto scan = open_scan(path, linear());
    EXPECT_TRUE(scan->info().lossy);
    EXPECT_FALSE(scan->info().camera);
    const auto light = test::exact_light(path, linear(), RegionPx{0, 0, width, height});
    for (std::size_t i = 0; i < light.samples().size(); ++i) {
      ASSERT_NEAR(light.samples()[i] * 255.0F, picture.samples()[i], 4.0);
    }
  }
}

TEST(EncodePicture, RefusesWhatItCannotEncode) {
  EXPECT_THROW(encode_png(Raster<std::uint8_t>()), std::invalid_argument);
  EXPECT_THROW(encode_png(Raster<std::uint8_t>(2, 2, 2)), std::invalid_argument);
  EXPECT_THROW(encode_jpeg(Raster<std::uint8_t>(2, 2, 4), 80), std::invalid_argument);
  EXPECT_THROW(encode_jpeg(Raster<std::uint8_t>(70000, 1, 1), 80), std::runtime_error);
}

/// A JPEG with an EXIF block right after its start: orientation, resolution, and a directory with
/// an exposure time.
std::vector<std::uint8_t> jpeg_with_exif(bool exposure, unsigned per_inch, std::size_t cut) {
  std::vector<std::uint8_t> exif{'E', 'x', 'i', 'f', 0, 0, 'M', 'M', 0, 42, 0, 0, 0, 8};
  const auto put = [&](unsigned value, unsigned size) {
    for (unsigned i = size; i-- > 0;) {
      exif.push_back(static_cast<std::uint8_t>((value >> (8U * i)) & 0xFFU));
    }
  };
  const auto entry = [&](unsigned tag, unsigned type, unsigned count, unsigned value) {
    put(tag, 2);
    put(type, 2);
    put(count, 4);
    put(value, 4);
  };
  put(4, 2);
  entry(0x011A, 5, 1, 62);
  entry(0x011B, 5, 1, 62);
  // A short stands in the upper half of its field.
  entry(0x0128, 3, 1, 2U << 16U);
  entry(0x8769, 4, 1, 70);
  put(0, 4);
  put(per_inch, 4);
  put(1, 4);
  put(1, 2);
  entry(exposure ? 0x829A : 0x9000, 5, 1, 62);
  put(0, 4);
  exif.resize(std::min(cut, exif.size()));
  const auto picture = encode_jpeg(smooth_picture(3), 90);
  // Drop the JFIF marker so that the EXIF resolution counts.
  const std::size_t after_jfif = 4U + picture[5] + 256U * picture[4];
  std::vector<std::uint8_t> file{0xFF, 0xD8, 0xFF, 0xE1};
  const std::size_t length = exif.size() + 2;
  file.push_back(static_cast<std::uint8_t>(length >> 8U));
  file.push_back(static_cast<std::uint8_t>(length & 0xFFU));
  file.insert(file.end(), exif.begin(), exif.end());
  file.insert(file.end(), picture.begin() + static_cast<std::ptrdiff_t>(after_jfif), picture.end());
  return file;
}

TEST(Jpeg, ExifTellsACamera) {
  const TempFolder folder;
  const std::string path = folder.file("scan.jpg");
  save(path, jpeg_with_exif(true, 72, 1000));
  auto scan = open_scan(path, {});
  EXPECT_TRUE(scan->info().camera);
  // A camera's 72 px/inch is a filler.
  EXPECT_FALSE(scan->info().tag_pixels_per_mm.has_value());
  EXPECT_TRUE(has_caution(scan->info(), CautionKind::transfer_assumed));
  save(path, jpeg_with_exif(false, 2400, 1000));
  scan = open_scan(path, {});
  EXPECT_FALSE(scan->info().camera);
  EXPECT_NEAR(scan->info().tag_pixels_per_mm.value_or(0.0), 2400 / 25.4, 1e-9);
}

TEST(Jpeg, CutExifBlocksAreHarmless) {
  const TempFolder folder;
  const std::string path = folder.file("scan.jpg");
  for (std::size_t cut = 0; cut < 110; ++cut) {
    save(path, jpeg_with_exif(true, 300, cut));
    EXPECT_EQ(open_scan(path, {})->info().width_px, width) << cut;
  }
}

TEST(Jpeg, ProgressiveAndProfile) {
  const TempFolder folder;
  const std::string path = folder.file("scan.jpg");
  const auto picture = smooth_picture(1);
  jpeg_compress_struct encoder{};
  jpeg_error_mgr errors{};
  encoder.err = jpeg_std_error(&errors);
  jpeg_create_compress(&encoder);
  unsigned char* bytes = nullptr;
  unsigned long count = 0;
  jpeg_mem_dest(&encoder, &bytes, &count);
  encoder.image_width = width;
  encoder.image_height = height;
  encoder.input_components = 1;
  encoder.in_color_space = JCS_GRAYSCALE;
  jpeg_set_defaults(&encoder);
  jpeg_simple_progression(&encoder);
  jpeg_start_compress(&encoder, TRUE);
  // No profile at all, but marked as one: said, and read as if there were none.
  const std::vector<JOCTET> profile(200, 1);
  jpeg_write_icc_profile(&encoder, profile.data(), static_cast<unsigned>(profile.size()));
  for (int y = 0; y < height; ++y) {
    auto row = std::vector<std::uint8_t>(picture.row(y), picture.row(y) + width);
    JSAMPROW rows[1] = {row.data()};
    jpeg_write_scanlines(&encoder, rows, 1);
  }
  jpeg_finish_compress(&encoder);
  jpeg_destroy_compress(&encoder);
  save(path, {bytes, bytes + count});
  std::free(bytes);
  const auto scan = open_scan(path, linear());
  EXPECT_TRUE(has_caution(scan->info(), CautionKind::profile_unfit));
  const auto light = test::exact_light(path, linear(), RegionPx{0, 0, width, height});
  for (std::size_t i = 0; i < light.samples().size(); ++i) {
    ASSERT_NEAR(light.samples()[i] * 255.0F, picture.samples()[i], 12.0);
  }
}

}  // namespace
}  // namespace fogline
