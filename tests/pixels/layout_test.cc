// Every layout of a TIFF must give the same light, bit by bit, for the same picture.

#include "pixels/exact_light.h"
#include "pixels/test_files.h"

#include <fogline/base/refusal.h>
#include <fogline/pixels/open_scan.h>

#include <array>
#include <cmath>
#include <cstdio>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using test::TempFolder;
using test::TiffSpec;

OpenOptions linear() {
  return OpenOptions{Transfer{TransferKind::linear, std::nullopt, TransferSource::option}};
}

Raster<float> light_of(const std::string& path, const RegionPx& region) {
  return test::exact_light(path, linear(), region);
}

/// Share of full code that the spec's picture stores at a place.
double stored_share(const TiffSpec& spec, int x, int y, int c) {
  const std::uint16_t code = spec.code(x, y, c);
  return spec.bits == 8 ? (code >> 8) / 255.0 : code / 65535.0;
}

std::string name_of(const TiffSpec& spec) {
  return "bits " + std::to_string(spec.bits) + " format " + std::to_string(spec.sample_format) +
         " compression " + std::to_string(spec.compression) + " predictor " +
         std::to_string(spec.predictor) + (spec.separate ? " separate" : " contiguous") + " tile " +
         std::to_string(spec.tile) + " rows " + std::to_string(spec.rows_per_strip) + " colours " +
         std::to_string(spec.colours) + "+" + std::to_string(spec.extra) + " mode " + spec.mode;
}

/// All specs worth trying: strips and tiles, planes together and apart, each width of sample, each
/// lossless codec of the installed library.
std::vector<TiffSpec> all_layouts() {
  struct Type {
    int bits;
    int format;
  };
  constexpr std::array<Type, 4> types{Type{8, SAMPLEFORMAT_UINT}, Type{16, SAMPLEFORMAT_UINT},
                                      Type{32, SAMPLEFORMAT_UINT}, Type{32, SAMPLEFORMAT_IEEEFP}};
  constexpr std::array<int, 8> codecs{
      COMPRESSION_NONE,    COMPRESSION_LZW,  COMPRESSION_PACKBITS, COMPRESSION_ADOBE_DEFLATE,
      COMPRESSION_DEFLATE, COMPRESSION_ZSTD, COMPRESSION_LZMA,     COMPRESSION_LERC};
  std::vector<TiffSpec> specs;
  for (const Type& type : types) {
    for (const int codec : codecs) {
      if (TIFFIsCODECConfigured(static_cast<std::uint16_t>(codec)) == 0) {
        continue;
      }
      for (const int tile : {0, 16, 64}) {
        for (const bool separate : {false, true}) {
          TiffSpec spec;
          spec.bits = type.bits;
          spec.sample_format = type.format;
          spec.compression = codec;
          spec.tile = tile;
          spec.separate = separate;
          specs.push_back(spec);
        }
      }
    }
  }
  return specs;
}

void expect_picture(const std::string& path, const TiffSpec& spec) {
  SCOPED_TRACE(name_of(spec));
  const auto scan = open_scan(path, linear());
  ASSERT_EQ(scan->info().width_px, spec.width);
  ASSERT_EQ(scan->info().height_px, spec.height);
  ASSERT_EQ(scan->info().bits, spec.bits);
  ASSERT_EQ(scan->info().channels, spec.colours);
  ASSERT_EQ(scan->info().samples_per_pixel, spec.samples());
  const auto light = light_of(path, RegionPx{0, 0, spec.width, spec.height});
  for (int y = 0; y < spec.height; ++y) {
    for (int x = 0; x < spec.width; ++x) {
      for (int c = 0; c < spec.colours; ++c) {
        // Light is kept to 2^-30, float to 2^-24.
        ASSERT_NEAR(light.at(x, y, c), stored_share(spec, x, y, c), 1e-7)
            << "at " << x << ", " << y << ", " << c;
      }
    }
  }
}

TEST(Layout, EveryLayoutGivesTheSamePicture) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  const auto layouts = all_layouts();
  ASSERT_GE(layouts.size(), 4U * 4U * 6U);
  for (const TiffSpec& spec : layouts) {
    test::write_tiff(path, spec);
    expect_picture(path, spec);
  }
}

TEST(Layout, PredictorsByteOrdersAndBigTiff) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  for (const std::string mode : {"w", "wl", "wb", "w8", "w8b"}) {
    for (const int compression : {COMPRESSION_NONE, COMPRESSION_LZW, COMPRESSION_ADOBE_DEFLATE}) {
      for (const int bits : {8, 16, 32}) {
        for (const int tile : {0, 32}) {
          TiffSpec spec;
          spec.mode = mode;
          spec.bits = bits;
          spec.compression = compression;
          spec.predictor = compression == COMPRESSION_NONE ? 1 : 2;
          spec.tile = tile;
          test::write_tiff(path, spec);
          expect_picture(path, spec);
          // libtiff 4.5 can't read back what it writes so itself in a foreign byte order.
          const bool foreign = mode.back() == 'b';
          if (bits == 32 && compression != COMPRESSION_NONE && !foreign) {
            spec.sample_format = SAMPLEFORMAT_IEEEFP;
            spec.predictor = 3;
            test::write_tiff(path, spec);
            expect_picture(path, spec);
          }
        }
      }
    }
  }
}

TEST(Layout, ReversedBitsWithinBytes) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  for (const int compression : {COMPRESSION_NONE, COMPRESSION_ADOBE_DEFLATE}) {
    TiffSpec spec;
    spec.compression = compression;
    spec.more_tags = [](TIFF* tiff) { TIFFSetField(tiff, TIFFTAG_FILLORDER, FILLORDER_LSB2MSB); };
    test::write_tiff(path, spec);
    expect_picture(path, spec);
  }
}

TEST(Layout, GreyAndExtraChannels) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  for (const int colours : {1, 3}) {
    for (const int extra : {0, 1, 2}) {
      for (const bool separate : {false, true}) {
        TiffSpec spec;
        spec.colours = colours;
        spec.extra = extra;
        spec.separate = separate;
        spec.compression = separate ? COMPRESSION_LZW : COMPRESSION_NONE;
        test::write_tiff(path, spec);
        expect_picture(path, spec);
        const auto cautions = open_scan(path, {})->info().cautions;
        EXPECT_EQ(cautions.size(), extra > 0 ? 1U : 0U);
        if (!cautions.empty()) {
          EXPECT_EQ(cautions[0].fact.kind, CautionKind::channels_unused);
          EXPECT_EQ(cautions[0].severity, Severity::note);
        }
      }
    }
  }
}

TEST(Layout, WhiteIsZeroEqualsItsTwinExactly) {
  const TempFolder folder;
  for (const int bits : {8, 16, 32}) {
    for (const int compression : {COMPRESSION_NONE, COMPRESSION_LZW}) {
      TiffSpec spec;
      spec.colours = 1;
      spec.bits = bits;
      spec.compression = compression;
      test::write_tiff(folder.file("black.tif"), spec);
      spec.photometric = PHOTOMETRIC_MINISWHITE;
      test::write_tiff(folder.file("white.tif"), spec);
      const auto black = open_scan(folder.file("black.tif"), {});
      const auto white = open_scan(folder.file("white.tif"), {});
      const ScanGrid one = black->survey({500}, {});
      const ScanGrid other = white->survey({500}, {});
      EXPECT_EQ(one.light.root_codes().samples(), other.light.root_codes().samples());
      EXPECT_EQ(one.clipped.samples(), other.clipped.samples());
    }
  }
}

TEST(Layout, OrientationDoesNotMovePixels) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  for (int orientation = 1; orientation <= 8; ++orientation) {
    TiffSpec spec;
    spec.more_tags = [orientation](TIFF* tiff) {
      TIFFSetField(tiff, TIFFTAG_ORIENTATION, orientation);
    };
    test::write_tiff(path, spec);
    expect_picture(path, spec);
  }
}

TEST(Layout, HalfFloatSamples) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  TiffSpec spec;
  spec.colours = 1;
  spec.bits = 16;
  // 0x3C00 is one, 0x3800 a half, 0x0001 the smallest half above zero, 0xBC00 minus one.
  spec.code = [](int x, int, int) {
    constexpr std::array<std::uint16_t, 4> halves{0x3C00, 0x3800, 0x0001, 0xBC00};
    return halves[static_cast<std::size_t>(x) % halves.size()];
  };
  spec.more_tags = [](TIFF* tiff) {
    TIFFSetField(tiff, TIFFTAG_SAMPLEFORMAT, SAMPLEFORMAT_IEEEFP);
  };
  test::write_tiff(path, spec);
  const auto light = light_of(path, RegionPx{0, 0, 4, 1});
  EXPECT_FLOAT_EQ(light.at(0, 0), 1.0F);
  EXPECT_FLOAT_EQ(light.at(1, 0), 0.5F);
  EXPECT_NEAR(light.at(2, 0), std::ldexp(1.0, -24), 1e-9);
  EXPECT_FLOAT_EQ(light.at(3, 0), 0.0F);
}

TEST(Layout, LargestFullPageIsRead) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  TIFF* tiff = TIFFOpen(path.c_str(), "w");
  TiffSpec thumbnail;
  thumbnail.width = 90;
  thumbnail.height = 90;
  thumbnail.more_tags = [](TIFF* page) {
    TIFFSetField(page, TIFFTAG_SUBFILETYPE, FILETYPE_REDUCEDIMAGE);
  };
  test::write_page(tiff, thumbnail);
  TIFFWriteDirectory(tiff);
  TiffSpec small;
  small.width = 30;
  test::write_page(tiff, small);
  TIFFWriteDirectory(tiff);
  const TiffSpec scan;
  test::write_page(tiff, scan);
  TIFFClose(tiff);
  expect_picture(path, scan);
  const auto cautions = open_scan(path, {})->info().cautions;
  ASSERT_EQ(cautions.size(), 1U);
  EXPECT_EQ(cautions[0].fact.kind, CautionKind::several_pages);
}

TEST(Layout, JpegInTiffEqualsTheLibrarysOwnDecoding) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  for (const int tile : {0, 32}) {
    TiffSpec spec;
    spec.bits = 8;
    spec.width = 64;
    spec.height = 48;
    spec.tile = tile;
    spec.rows_per_strip = 16;
    spec.compression = COMPRESSION_JPEG;
    spec.photometric = PHOTOMETRIC_YCBCR;
    test::write_tiff(path, spec);
    const auto scan = open_scan(path, linear());
    EXPECT_TRUE(scan->info().lossy);
    const auto light = light_of(path, RegionPx{0, 0, 64, 48});
    TIFF* tiff = TIFFOpen(path.c_str(), "r");
    TIFFSetField(tiff, TIFFTAG_JPEGCOLORMODE, JPEGCOLORMODE_RGB);
    std::vector<std::uint8_t> unit(64U * 48U * 3U);
    const int side_x = tile > 0 ? tile : 64;
    const int side_y = tile > 0 ? tile : 16;
    for (int y = 0; y < 48; y += side_y) {
      for (int x = 0; x < 64; x += side_x) {
        const auto u = static_cast<std::uint32_t>(x);
        const auto v = static_cast<std::uint32_t>(y);
        ASSERT_GT(tile > 0 ? TIFFReadTile(tiff, unit.data(), u, v, 0, 0)
                           : TIFFReadEncodedStrip(tiff, v / 16, unit.data(), -1),
                  0);
        for (int j = y; j < std::min(48, y + side_y); ++j) {
          for (int i = x; i < x + side_x; ++i) {
            const auto at = static_cast<std::size_t>(((j - y) * side_x + i - x) * 3);
            ASSERT_NEAR(light.at(i, j, 1), unit[at + 1] / 255.0, 1e-7) << i << ", " << j;
          }
        }
      }
    }
    TIFFClose(tiff);
  }
}

/// The same picture in several layouts, written by another program (Debian's
/// golang-golang-x-image-dev).
TEST(Layout, PublicTwinsInOtherLayouts) {
  const std::string folder = "/usr/share/gocode/src/golang.org/x/image/testdata/";
  if (!std::filesystem::exists(folder + "video-001.png")) {
    GTEST_SKIP() << "golang-golang-x-image-dev is not installed";
  }
  const RegionPx whole{0, 0, 150, 103};
  const auto reference = light_of(folder + "video-001.png", whole);
  for (const char* name : {"video-001.tiff", "video-001-uncompressed.tiff",
                           "video-001-strip-64.tiff", "video-001-tile-64x64.tiff"}) {
    EXPECT_EQ(light_of(folder + name, whole).samples(), reference.samples()) << name;
  }
  const auto wide = light_of(folder + "video-001-16bit.tiff", whole);
  for (std::size_t i = 0; i < wide.samples().size(); ++i) {
    ASSERT_NEAR(wide.samples()[i], reference.samples()[i], 1.0 / 255.0);
  }
}

}  // namespace
}  // namespace fogline
