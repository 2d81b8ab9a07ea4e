// Files that are broken, absent, not scans or made to do harm: each is refused in one sentence.

#include "pixels/encode_picture.h"
#include "pixels/test_files.h"

#include <fogline/base/error.h>
#include <fogline/pixels/open_scan.h>

#include <array>
#include <cstring>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using test::TempFolder;
using test::TiffSpec;

/// Opens and surveys; the message of the refusal, or "" where there was none.
std::string refusal_of(const std::string& path) {
  try {
    open_scan(path, {})->survey({100000}, {});
  } catch (const FileError& error) {
    EXPECT_EQ(error.file(), path);
    return error.what();
  }
  return "";
}

/// One sentence that names the file and, after a semicolon, says what to do.
void expect_refusal(const std::string& path, const std::string& word) {
  const std::string message = refusal_of(path);
  EXPECT_THAT(message, testing::StartsWith(path + " "));
  EXPECT_THAT(message, testing::HasSubstr(word));
  EXPECT_THAT(message, testing::HasSubstr("; "));
  EXPECT_THAT(message, testing::EndsWith("."));
  EXPECT_THAT(message, testing::Not(testing::HasSubstr("\n")));
}

TEST(Hostile, FilesThatAreNoPictures) {
  const TempFolder folder;
  expect_refusal(folder.file("absent.tif"), "can't be opened");
  expect_refusal(folder.path().string(), "is a folder");
  expect_refusal("/dev/null", "is not a file");
  test::write_bytes(folder.file("empty.tif"), {});
  expect_refusal(folder.file("empty.tif"), "is empty");
  const std::string text = "A list of what to buy: fixer, gloves.\n";
  test::write_bytes(folder.file("text.tif"), {text.begin(), text.end()});
  expect_refusal(folder.file("text.tif"), "is not a TIFF, PNG or JPEG");
  test::write_bytes(folder.file("one.tif"), {'I'});
  expect_refusal(folder.file("one.tif"), "is not a TIFF, PNG or JPEG");
}

TEST(Hostile, PicturesThatAreNoScans) {
  const TempFolder folder;
  const std::string path = folder.file("picture.tif");
  TiffSpec spec;
  spec.bits = 8;
  spec.colours = 1;
  spec.photometric = PHOTOMETRIC_PALETTE;
  spec.more_tags = [](TIFF* tiff) {
    const std::vector<std::uint16_t> map(256, 0);
    TIFFSetField(tiff, TIFFTAG_COLORMAP, map.data(), map.data(), map.data());
  };
  test::write_tiff(path, spec);
  expect_refusal(path, "palette");
  spec.more_tags = nullptr;
  spec.photometric = PHOTOMETRIC_CIELAB;
  spec.colours = 3;
  test::write_tiff(path, spec);
  expect_refusal(path, "CIELab");
  spec.photometric = PHOTOMETRIC_SEPARATED;
  spec.colours = 4;
  test::write_tiff(path, spec);
  expect_refusal(path, "CMYK");
  constexpr int mosaic = 32803;
  spec.photometric = mosaic;
  spec.colours = 1;
  test::write_tiff(path, spec);
  expect_refusal(path, "mosaic");
  TiffSpec one_bit;
  one_bit.width = 64;
  one_bit.colours = 1;
  one_bit.more_tags = [](TIFF* tiff) { TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, 1); };
  test::write_tiff(path, one_bit);
  expect_refusal(path, "one bit");
  TiffSpec signed_codes;
  signed_codes.sample_format = SAMPLEFORMAT_INT;
  test::write_tiff(path, signed_codes);
  expect_refusal(path, "neither 8, 16 or 32 bits");
}

/// Sets one entry of the first directory of a little-endian classic TIFF.
void set_entry(std::vector<char>& bytes, unsigned tag, std::uint32_t value) {
  const auto number = [&](std::size_t at, std::size_t size) {
    std::size_t result = 0;
    for (std::size_t i = size; i-- > 0;) {
      result = (result << 8U) | static_cast<unsigned char>(bytes[at + i]);
    }
    return result;
  };
  const std::size_t directory = number(4, 4);
  for (std::size_t i = 0; i < number(directory, 2); ++i) {
    const std::size_t entry = directory + 2 + 12 * i;
    if (number(entry, 2) == tag) {
      const std::size_t size = number(entry + 2, 2) == 3 ? 2 : 4;
      std::memcpy(&bytes[entry + 8], &value, size);
    }
  }
}

TEST(Hostile, ClaimsBeyondTheFile) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  for (const int compression : {COMPRESSION_NONE, COMPRESSION_LZW, COMPRESSION_ADOBE_DEFLATE}) {
    TiffSpec spec;
    spec.mode = "wl";
    spec.compression = compression;
    spec.rows_per_strip = 47;
    test::write_tiff(path, spec);
    const auto sound = test::bytes_of(path);
    for (const std::uint32_t size : {100000U, 1000000U, 0x7FFFFFFFU, 0xFFFFFFFFU}) {
      auto bytes = sound;
      set_entry(bytes, TIFFTAG_IMAGELENGTH, size);
      set_entry(bytes, TIFFTAG_ROWSPERSTRIP, size);
      test::write_bytes(path, bytes);
      EXPECT_NE(refusal_of(path), "") << compression << " " << size;
      set_entry(bytes, TIFFTAG_IMAGEWIDTH, size);
      test::write_bytes(path, bytes);
      EXPECT_NE(refusal_of(path), "") << compression << " " << size;
    }
    auto bytes = sound;
    set_entry(bytes, TIFFTAG_STRIPOFFSETS, 0xFFFFFF00U);
    test::write_bytes(path, bytes);
    EXPECT_NE(refusal_of(path), "") << compression;
  }
}

TEST(Hostile, DirectoriesInACircleEnd) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  TiffSpec spec;
  spec.mode = "wl";
  test::write_tiff(path, spec);
  auto bytes = test::bytes_of(path);
  std::uint32_t directory = 0;
  std::memcpy(&directory, &bytes[4], 4);
  std::uint16_t entries = 0;
  std::memcpy(&entries, &bytes[directory], 2);
  std::memcpy(&bytes[directory + 2U + 12U * entries], &directory, 4);
  test::write_bytes(path, bytes);
  const auto scan = open_scan(path, {});
  EXPECT_EQ(scan->info().width_px, spec.width);
}

/// Cuts the file at many lengths; each gives a refusal or data, and at least one a refusal.
void expect_survives_truncation(const std::string& path) {
  const auto bytes = test::bytes_of(path);
  const std::size_t step = std::max<std::size_t>(1, bytes.size() / 400);
  int refused = 0;
  int cut = 0;
  for (std::size_t length = 0; length < bytes.size(); length += step) {
    test::write_bytes(path, {bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(length)});
    refused += refusal_of(path).empty() ? 0 : 1;
    ++cut;
  }
  // A cut after the last pixel may pass; one before it may not.
  EXPECT_GE(refused, cut * 9 / 10);
}

TEST(Hostile, EveryTruncatedTiffIsRefused) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  for (const int compression : {COMPRESSION_NONE, COMPRESSION_LZW, COMPRESSION_ADOBE_DEFLATE,
                                COMPRESSION_PACKBITS, COMPRESSION_JPEG}) {
    for (const int tile : {0, 16}) {
      TiffSpec spec;
      spec.compression = compression;
      spec.tile = tile;
      spec.bits = compression == COMPRESSION_JPEG ? 8 : 16;
      spec.rows_per_strip = 8;
      test::write_tiff(path, spec);
      expect_survives_truncation(path);
    }
  }
}

Raster<std::uint8_t> small_picture() {
  Raster<std::uint8_t> picture(61, 47, 3);
  for (int y = 0; y < 47; ++y) {
    for (int x = 0; x < 61; ++x) {
      for (int c = 0; c < 3; ++c) {
        picture.at(x, y, c) = static_cast<std::uint8_t>(test::test_code(x, y, c) >> 8U);
      }
    }
  }
  return picture;
}

TEST(Hostile, EveryTruncatedPngAndJpegIsRefused) {
  const TempFolder folder;
  const std::string path = folder.file("scan");
  const auto png = encode_png(small_picture());
  test::write_bytes(path, {png.begin(), png.end()});
  expect_survives_truncation(path);
  const auto jpeg = encode_jpeg(small_picture(), 90);
  test::write_bytes(path, {jpeg.begin(), jpeg.end()});
  expect_survives_truncation(path);
}

TEST(Hostile, ChangedBytesNeverCrash) {
  const TempFolder folder;
  const std::string path = folder.file("scan");
  std::vector<std::vector<char>> files;
  TiffSpec spec;
  spec.compression = COMPRESSION_LZW;
  spec.tile = 16;
  test::write_tiff(path, spec);
  files.push_back(test::bytes_of(path));
  const auto png = encode_png(small_picture());
  files.emplace_back(png.begin(), png.end());
  const auto jpeg = encode_jpeg(small_picture(), 90);
  files.emplace_back(jpeg.begin(), jpeg.end());
  int answered = 0;
  for (const auto& sound : files) {
    for (std::uint32_t i = 0; i < 500; ++i) {
      auto bytes = sound;
      const std::uint32_t mixed = (i + 1) * 2654435761U;
      bytes[(mixed >> 8U) % bytes.size()] ^= static_cast<char>(1U << (mixed % 8U));
      test::write_bytes(path, bytes);
      refusal_of(path);
      ++answered;
    }
  }
  EXPECT_EQ(answered, 1500);
}

}  // namespace
}  // namespace fogline
