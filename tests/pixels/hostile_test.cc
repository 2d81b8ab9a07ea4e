// Files that are broken, absent, not scans or made to do harm: each is refused in one sentence.

#include "base/refusal_of.h"
#include "pixels/encode_picture.h"
#include "pixels/test_files.h"

#include <fogline/pixels/open_scan.h>
#include <fogline/words/refusal_words.h>

#include <array>
#include <cstring>
#include <optional>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using test::TempFolder;
using test::TiffSpec;

/// Opens and surveys; why that was refused, or nothing where it wasn't. Whatever a decoder said,
/// the refusal's sentence is one line.
std::optional<Refusal> refusal_of(const std::string& path) {
  const auto refusal = test::refusal_of([&] { open_scan(path, {})->survey({100000}, {}); });
  if (!refusal) {
    return std::nullopt;
  }
  EXPECT_EQ(refusal->file(), path);
  const std::string sentence = sentence_of(*refusal);
  EXPECT_THAT(sentence, testing::StartsWith(path + " "));
  EXPECT_THAT(sentence, testing::EndsWith("."));
  EXPECT_THAT(sentence, testing::Not(testing::HasSubstr("\n")));
  return refusal->why().kind;
}

TEST(Hostile, FilesThatAreNoPictures) {
  const TempFolder folder;
  EXPECT_EQ(refusal_of(folder.file("absent.tif")), Refusal::cant_open);
  EXPECT_EQ(refusal_of(folder.path().string()), Refusal::is_folder);
  EXPECT_EQ(refusal_of("/dev/null"), Refusal::is_no_file);
  test::write_bytes(folder.file("empty.tif"), {});
  EXPECT_EQ(refusal_of(folder.file("empty.tif")), Refusal::is_empty);
  const std::string text = "A list of what to buy: fixer, gloves.\n";
  test::write_bytes(folder.file("text.tif"), {text.begin(), text.end()});
  EXPECT_EQ(refusal_of(folder.file("text.tif")), Refusal::no_picture);
  test::write_bytes(folder.file("one.tif"), {'I'});
  EXPECT_EQ(refusal_of(folder.file("one.tif")), Refusal::no_picture);
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
  EXPECT_EQ(refusal_of(path), Refusal::palette);
  spec.more_tags = nullptr;
  spec.photometric = PHOTOMETRIC_CIELAB;
  spec.colours = 3;
  test::write_tiff(path, spec);
  EXPECT_EQ(refusal_of(path), Refusal::cielab);
  spec.photometric = PHOTOMETRIC_SEPARATED;
  spec.colours = 4;
  test::write_tiff(path, spec);
  EXPECT_EQ(refusal_of(path), Refusal::cmyk);
  constexpr int mosaic = 32803;
  spec.photometric = mosaic;
  spec.colours = 1;
  test::write_tiff(path, spec);
  EXPECT_EQ(refusal_of(path), Refusal::raw_mosaic);
  TiffSpec one_bit;
  one_bit.width = 64;
  one_bit.colours = 1;
  one_bit.more_tags = [](TIFF* tiff) { TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, 1); };
  test::write_tiff(path, one_bit);
  EXPECT_EQ(refusal_of(path), Refusal::one_bit);
  TiffSpec signed_codes;
  signed_codes.sample_format = SAMPLEFORMAT_INT;
  test::write_tiff(path, signed_codes);
  EXPECT_EQ(refusal_of(path), Refusal::odd_sample_bits);
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
      EXPECT_TRUE(refusal_of(path)) << compression << " " << size;
      set_entry(bytes, TIFFTAG_IMAGEWIDTH, size);
      test::write_bytes(path, bytes);
      EXPECT_TRUE(refusal_of(path)) << compression << " " << size;
    }
    auto bytes = sound;
    set_entry(bytes, TIFFTAG_STRIPOFFSETS, 0xFFFFFF00U);
    test::write_bytes(path, bytes);
    EXPECT_TRUE(refusal_of(path)) << compression;
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
    refused += refusal_of(path) ? 1 : 0;
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
