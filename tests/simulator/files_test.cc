#include "simulator/icc_profile.h"
#include "simulator/render.h"

#include <filesystem>
#include <fstream>
#include <stdexcept>

#include <gtest/gtest.h>
#include <tiffio.h>

namespace filmsim {
namespace {

Simulated small_scan(const EncodingSettings& encoding) {
  Scenario scenario;
  scenario.width_px = 90;
  scenario.height_px = 40;
  scenario.pixels_per_mm = 10.0;
  scenario.encoding = encoding;
  return render(scenario);
}

std::string temporary(const std::string& name) {
  return (std::filesystem::path(testing::TempDir()) / name).string();
}

std::vector<std::uint16_t> codes_in(const std::string& path, int bits) {
  TIFF* tiff = TIFFOpen(path.c_str(), "r");
  std::vector<std::uint16_t> codes;
  if (tiff == nullptr) return codes;
  std::uint32_t height = 0;
  TIFFGetField(tiff, TIFFTAG_IMAGELENGTH, &height);
  const auto bytes = static_cast<std::size_t>(TIFFScanlineSize(tiff));
  std::vector<std::uint8_t> narrow(bytes);
  std::vector<std::uint16_t> wide(bytes / 2 + 1);
  for (std::uint32_t y = 0; y < height; ++y) {
    if (bits == 8) {
      TIFFReadScanline(tiff, narrow.data(), y, 0);
      codes.insert(codes.end(), narrow.begin(), narrow.end());
    } else {
      TIFFReadScanline(tiff, wide.data(), y, 0);
      codes.insert(codes.end(), wide.begin(), wide.begin() + static_cast<long>(bytes / 2));
    }
  }
  TIFFClose(tiff);
  return codes;
}

TEST(Files, TiffHoldsTheCodes) {
  for (const int bits : {8, 16}) {
    for (const int channels : {1, 3}) {
      for (const bool compressed : {false, true}) {
        EncodingSettings encoding;
        encoding.bits = bits;
        encoding.channels = channels;
        encoding.compressed = compressed;
        const Simulated scan = small_scan(encoding);
        const std::string path = write_scan(scan, temporary("codes.tif"));
        EXPECT_EQ(codes_in(path, bits), scan.picture.codes);
      }
    }
  }
}

TEST(Files, TiffTellsResolutionAndTone) {
  EncodingSettings encoding;
  encoding.transfer = Transfer::kPower;
  encoding.exponent = 1.8;
  encoding.tone_told = ToneTold::kFileTag;
  const std::string path = write_scan(small_scan(encoding), temporary("tags.tif"));
  TIFF* tiff = TIFFOpen(path.c_str(), "r");
  ASSERT_NE(tiff, nullptr);
  float resolution = 0.0F;
  EXPECT_EQ(TIFFGetField(tiff, TIFFTAG_XRESOLUTION, &resolution), 1);
  EXPECT_NEAR(resolution, 254.0F, 0.01F);
  std::uint16_t* red = nullptr;
  std::uint16_t* green = nullptr;
  std::uint16_t* blue = nullptr;
  ASSERT_EQ(TIFFGetField(tiff, TIFFTAG_TRANSFERFUNCTION, &red, &green, &blue), 1);
  EXPECT_EQ(red[0], 0);
  EXPECT_EQ(red[65535], 65535);
  EXPECT_NEAR(red[32768], 65535.0 * std::pow(32768.0 / 65535.0, 1.8), 1.0);
  TIFFClose(tiff);
}

TEST(Files, EndingFollowsTheFileKind) {
  EncodingSettings encoding;
  encoding.bits = 8;
  encoding.file = FileKind::kJpeg;
  EXPECT_TRUE(write_scan(small_scan(encoding), temporary("any.tif")).ends_with("any.jpg"));
  encoding.file = FileKind::kPng;
  const std::string png = write_scan(small_scan(encoding), temporary("any.tif"));
  EXPECT_TRUE(png.ends_with("any.png"));
  std::ifstream file(png, std::ios::binary);
  std::string head(4, ' ');
  file.read(head.data(), 4);
  EXPECT_EQ(head, "\x89PNG");
  EXPECT_TRUE(std::filesystem::exists(temporary("any.truth.json")));
}

TEST(Files, UnwritablePlaceThrows) {
  EXPECT_THROW(write_scan(small_scan({}), "/no/such/folder/scan.tif"), std::runtime_error);
}

TEST(Files, ProfilesAreProfiles) {
  for (const Transfer transfer : {Transfer::kLinear, Transfer::kSrgb, Transfer::kPower}) {
    for (const int channels : {1, 3}) {
      EncodingSettings encoding;
      encoding.transfer = transfer;
      encoding.channels = channels;
      const std::string profile = icc_profile(encoding);
      ASSERT_GT(profile.size(), 128U);
      EXPECT_EQ(profile.substr(36, 4), "acsp");
      // Year 2000 whenever it was made, so that files can be compared byte by byte.
      EXPECT_EQ(profile.substr(24, 2), "\x07\xD0");
      EXPECT_EQ(profile.substr(16, 4), channels == 1 ? "GRAY" : "RGB ");
    }
  }
}

}  // namespace
}  // namespace filmsim
