// A grey scan and its twin stored with white as zero hold the same light: every number that is
// reported must be the same.
#include "measure_file.h"

#include <fogline/record/record_json.h>

#include <cstdint>
#include <memory>
#include <stdexcept>

#include <gtest/gtest.h>
#include <tiffio.h>

namespace end_to_end {
namespace {

using TiffFile = std::unique_ptr<TIFF, void (*)(TIFF*)>;

TiffFile open_tiff(const std::string& path, const char* mode) {
  TiffFile file(TIFFOpen(path.c_str(), mode), TIFFClose);
  if (!file) {
    throw std::runtime_error("can't open " + path);
  }
  return file;
}

template <typename Value>
Value copy_tag(TIFF* from, TIFF* to, ttag_t tag) {
  Value value{};
  TIFFGetField(from, tag, &value);
  TIFFSetField(to, tag, value);
  return value;
}

/// Writes a 16-bit grey file again with its codes turned over and told so; all else is kept.
void write_white_is_zero(const std::string& from_path, const std::string& to_path) {
  const TiffFile from = open_tiff(from_path, "rm");
  const TiffFile to = open_tiff(to_path, "w");
  const auto width = copy_tag<std::uint32_t>(from.get(), to.get(), TIFFTAG_IMAGEWIDTH);
  const auto height = copy_tag<std::uint32_t>(from.get(), to.get(), TIFFTAG_IMAGELENGTH);
  for (const ttag_t tag : {TIFFTAG_SAMPLESPERPIXEL, TIFFTAG_BITSPERSAMPLE, TIFFTAG_PLANARCONFIG,
                           TIFFTAG_ORIENTATION, TIFFTAG_RESOLUTIONUNIT}) {
    copy_tag<std::uint16_t>(from.get(), to.get(), tag);
  }
  copy_tag<float>(from.get(), to.get(), TIFFTAG_XRESOLUTION);
  copy_tag<float>(from.get(), to.get(), TIFFTAG_YRESOLUTION);
  std::uint32_t bytes = 0;
  void* profile = nullptr;
  ASSERT_EQ(TIFFGetField(from.get(), TIFFTAG_ICCPROFILE, &bytes, &profile), 1);
  TIFFSetField(to.get(), TIFFTAG_ICCPROFILE, bytes, profile);
  TIFFSetField(to.get(), TIFFTAG_PHOTOMETRIC, PHOTOMETRIC_MINISWHITE);
  std::vector<std::uint16_t> row(width);
  for (std::uint32_t y = 0; y < height; ++y) {
    ASSERT_EQ(TIFFReadScanline(from.get(), row.data(), y, 0), 1);
    for (std::uint16_t& code : row) {
      code = static_cast<std::uint16_t>(65535 - code);
    }
    ASSERT_EQ(TIFFWriteScanline(to.get(), row.data(), y, 0), 1);
  }
}

std::string report_of(const std::string& path) {
  fogline::RollRecord record;
  record.measurement = measure_file(path);
  return fogline::json_from_record(record);
}

TEST(WhiteIsZero, TwinGivesTheSameReport) {
  filmsim::Scenario scenario = filmsim::sample_scenario("tiny", 11);
  scenario.encoding.channels = 1;
  scenario.encoding.bits = 16;
  scenario.encoding.compressed = false;
  scenario.encoding.tone_told = filmsim::ToneTold::kIccProfile;
  scenario.encoding.resolution_tag = filmsim::ResolutionTag::kRight;
  const TemporaryFolder folder;
  const std::string path = write_scan(filmsim::render(scenario), folder.file("scan.tif"));
  const std::string report = report_of(path);
  ASSERT_NE(report.find("\"comparable\""), std::string::npos) << report;

  // In the same place, as the report names its file.
  const std::string twin = folder.file("twin.tif");
  write_white_is_zero(path, twin);
  std::filesystem::rename(twin, path);
  const TiffFile file = open_tiff(path, "rm");
  std::uint16_t photometric = 0;
  TIFFGetField(file.get(), TIFFTAG_PHOTOMETRIC, &photometric);
  ASSERT_EQ(photometric, PHOTOMETRIC_MINISWHITE);
  EXPECT_EQ(report_of(path), report);
}

}  // namespace
}  // namespace end_to_end
