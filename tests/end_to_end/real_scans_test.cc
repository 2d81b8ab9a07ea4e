// Real pictures that nobody simulated, where they are at hand beside the project.
#include "measure_file.h"
#include "process/own_process_film.h"

#include <array>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>

#include <gtest/gtest.h>

namespace end_to_end {
namespace {

std::string real_file(const char* name) {
  return std::string(FOGLINE_SHARED_DIR) + "/real/" + name;
}

// A phone picture of a 135 negative on a light panel, 54 pixels a millimetre. Places by eye.
TEST(PhonePicture, FilmAndFramesAreFound) {
  const std::string path = real_file("negative-135-phone.jpg");
  if (!std::filesystem::exists(path)) {
    GTEST_SKIP() << "no real scans beside the project";
  }
  const fogline::RollMeasurement roll = measure_file(path);
  const fogline::ScanMeasurement& scan = roll.scans.front();
  ASSERT_EQ(scan.strips.size(), 1U);
  EXPECT_EQ(scan.strips[0].format, fogline::FilmFormat::f135);
  EXPECT_LT(std::abs(scan.strips[0].rotation_deg), 3.0);
  EXPECT_GE(scan.strips[0].perforations, 16);
  const auto covered = std::count_if(
      scan.outlines.begin(), scan.outlines.end(), [](const fogline::Outline& outline) {
        return outline.kind == fogline::OutlineKind::perforation && outline.partial;
      });
  EXPECT_GE(covered, 8);

  ASSERT_EQ(scan.frames.size(), 3U);
  EXPECT_TRUE(scan.frames[0].cut);
  EXPECT_FALSE(scan.frames[1].cut);
  EXPECT_TRUE(scan.frames[2].cut);
  const fogline::BoxPx& whole = scan.frames[1].box_px;
  constexpr double slack_px = 0.4 * 54.0;  // 0.4 mm, as far as the eye can place a border
  EXPECT_NEAR(whole.x, 930.0, slack_px);
  EXPECT_NEAR(whole.y, 221.0, slack_px);
  EXPECT_NEAR(whole.x + whole.width, 2248.0, slack_px);
  EXPECT_NEAR(whole.y + whole.height, 2203.0, slack_px);

  EXPECT_EQ(scan.fitness, fogline::Fitness::indicative);
  ASSERT_TRUE(scan.base_fog.has_value());
  const fogline::Quantity& base = scan.base_fog->visual;
  // About 0.1 on an sRGB reading; such films usually have 0.2 to 0.35.
  EXPECT_NEAR(base.value, 0.10, 0.03);
  EXPECT_LE(base.lower95.value_or(base.value - base.u95), 0.10);
  EXPECT_GE(base.upper95.value_or(base.value + base.u95), 0.30);
}

// A camera picture under strong yellow light, in a makeshift holder that cuts across the film, halo
// round the holes, light that falls off to the left and below. Places by eye.
TEST(YellowLightPicture, FilmAndFramesAreFound) {
  const std::string path = real_file("negative-135-camera-yellow-light.jpg");
  if (!std::filesystem::exists(path)) {
    GTEST_SKIP() << "no real scans beside the project";
  }
  const fogline::RollMeasurement roll = measure_file(path);
  const fogline::ScanMeasurement& scan = roll.scans.front();
  ASSERT_EQ(scan.strips.size(), 1U);
  EXPECT_EQ(scan.strips[0].format, fogline::FilmFormat::f135);
  EXPECT_GE(scan.strips[0].perforations, 17);
  EXPECT_NEAR(scan.strips[0].rotation_deg, -2.5, 0.5);

  ASSERT_EQ(scan.frames.size(), 3U);
  EXPECT_TRUE(scan.frames[0].cut);
  EXPECT_FALSE(scan.frames[1].cut);
  EXPECT_TRUE(scan.frames[2].cut);
  constexpr double slack_px = 0.4 * 51.0;  // 0.4 mm, as far as the eye can place a border
  const std::array<fogline::PointPx, 4> by_eye{
      fogline::PointPx{610.0, 345.0}, {2475.0, 255.0}, {2530.0, 1525.0}, {665.0, 1575.0}};
  for (std::size_t i = 0; i < by_eye.size(); ++i) {
    EXPECT_NEAR(scan.frames[1].corners_px[i].x, by_eye[i].x, slack_px) << i;
    EXPECT_NEAR(scan.frames[1].corners_px[i].y, by_eye[i].y, slack_px) << i;
  }
  EXPECT_EQ(scan.fitness, fogline::Fitness::indicative);
  EXPECT_LT(scan.tint.confidence, 0.8);
}

/// A copy of a JPEG file without what its camera wrote of itself (segment APP1), as editors and
/// messengers leave it.
std::string without_record(const std::string& path, const TemporaryFolder& folder) {
  std::ifstream in(path, std::ios::binary);
  const std::string bytes((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
  const auto byte = [&](std::size_t at) { return static_cast<unsigned char>(bytes[at]); };
  std::string kept = bytes.substr(0, 2);
  std::size_t at = 2;
  constexpr unsigned char app1 = 0xE1;
  constexpr unsigned char start_of_scan = 0xDA;
  while (at + 4 < bytes.size() && byte(at + 1) != start_of_scan) {
    const std::size_t length = 2U + 256U * byte(at + 2) + byte(at + 3);
    if (byte(at + 1) != app1) {
      kept += bytes.substr(at, length);
    }
    at += length;
  }
  std::string copy = folder.file("without-record.jpg");
  std::ofstream(copy, std::ios::binary) << kept << bytes.substr(at);
  return copy;
}

// One frame of colour negative film, no bare light in sight. Whether its camera's record is there
// or not, nothing is said of it as of black-and-white film.
TEST(ColourNegative, IsNoBlackAndWhiteFilm) {
  const std::string path = real_file("colour-negative-camera.jpg");
  if (!std::filesystem::exists(path)) {
    GTEST_SKIP() << "no real scans beside the project";
  }
  const TemporaryFolder folder;
  for (const std::string& file : {path, without_record(path, folder)}) {
    SCOPED_TRACE(file);
    const fogline::RollMeasurement roll = measure_file(file);
    const fogline::ScanMeasurement& scan = roll.scans.front();
    EXPECT_FALSE(scan.base_fog.has_value());
    EXPECT_FALSE(scan.tint.kind.has_value());
    EXPECT_FALSE(scan.pixels_per_mm.has_value());
    if (scan.fitness != fogline::Fitness::unfit) {
      EXPECT_EQ(scan.tint.kind.why().kind, fogline::Unknown::colours_in_pictures);
      EXPECT_EQ(fogline::why_own_process(roll, nullptr), fogline::Unknown::colour_film);
    }
  }
}

// A light panel without film: nothing is found, and nothing read as film.
TEST(OpenGate, HoldsNoFilm) {
  const std::string path = real_file("open-gate-camera.jpg");
  if (!std::filesystem::exists(path)) {
    GTEST_SKIP() << "no real scans beside the project";
  }
  const fogline::RollMeasurement roll = measure_file(path);
  const fogline::ScanMeasurement& scan = roll.scans.front();
  EXPECT_EQ(scan.fitness, fogline::Fitness::unfit);
  EXPECT_TRUE(scan.frames.empty());
  EXPECT_FALSE(scan.base_fog.has_value());
}

// Six strips of evenly exposed film that isn't silver: nothing to find, nothing to judge.
TEST(StepStrips, NothingIsInvented) {
  const std::string path = real_file("step-strips-flatbed.tif");
  if (!std::filesystem::exists(path)) {
    GTEST_SKIP() << "no real scans beside the project";
  }
  const fogline::RollMeasurement roll = measure_file(path);
  const fogline::ScanMeasurement& scan = roll.scans.front();
  EXPECT_TRUE(scan.frames.empty());
  for (const fogline::StripMeasurement& strip : scan.strips) {
    EXPECT_EQ(strip.perforations, 0);
    EXPECT_EQ(strip.format, fogline::FilmFormat::unknown);
  }
  EXPECT_EQ(scan.fitness, fogline::Fitness::unfit);
  EXPECT_TRUE(has_caution(scan, "no-negative"));
  EXPECT_EQ(roll.contrast.method, fogline::ContrastMethod::none);
  EXPECT_FALSE(roll.contrast.contrast_index.has_value());
}

}  // namespace
}  // namespace end_to_end
