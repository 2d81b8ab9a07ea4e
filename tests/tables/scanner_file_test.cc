#include "base/refusal_of.h"
#include "tables/written_file.h"

#include <fogline/tables/read_tables.h>

#include <cmath>
#include <optional>
#include <string>

#include <gtest/gtest.h>

namespace fogline {
namespace {

ScannerCalibration invented() {
  ScannerCalibration made;
  made.method = CalibrationMethod::nominal_wedge;
  made.bits = 16;
  made.channels = 3;
  made.bare_code = PerChannel<double>{0.81, 0.83, 0.79};
  made.curves.channels = 3;
  for (CodeCurve& curve : made.curves.of_channel) {
    curve.code = {0.001, 0.1, 1.0 / 3.0, 1.0};
    curve.light = {0.0007, 0.1, 0.4, 1.0};
  }
  made.doubt = {{0.0, 0.0, 0.0, even_field(0.4)},
                {1.5, 0.004, 0.0031, {0.30, 0.35, 0.40}},
                {3.0, 0.02, 0.05, even_field(0.3)}};
  made.slope_doubt_share = 0.03;
  made.certificate_doubt = 0.0036;
  made.stray = {0.011, 0.002, true};
  made.callier = 1.1;
  made.shown_from_density = 0.05;
  made.shown_to_density = 3.05;
  made.density_limit = 2.7;
  made.residual_rms = 0.0041;
  CalibrationStep step;
  step.number = 4;
  step.label = "D";
  step.corners_px = {{{1.5, 2}, {3, 2}, {3, 4}, {1.5, 4}}};
  step.code = {0.5, 0.52, 0.49};
  step.reference_density = 0.5;
  step.density = 0.497;
  step.u95 = 0.01;
  step.uncalibrated_density = 0.43;
  step.used = false;
  step.outlier = true;
  step.left_out = {Unknown::not_told, {}, {}, "It doesn't fit."};
  made.steps = {step};
  step.density = INFINITY;
  step.uncalibrated_density.reset();
  made.steps.push_back(step);
  made.reference = "21x0.15";
  made.source_files = {"wedge \"one\".tif"};
  made.date = "2026-11-26";
  made.tool_version = "0.1.0";
  return made;
}

std::optional<Refusal> refusal(const std::string& text) {
  const WrittenFile file("scanner.json", text);
  return test::kind_of_refusal([&] { read_scanner_file(file.path()); });
}

/// The field that can't be, in a file whose checksum is right.
std::string impossible_field(const ScannerCalibration& calibration) {
  const WrittenFile file("scanner.json", scanner_file_text(calibration));
  const auto refused = test::refusal_of([&] { read_scanner_file(file.path()); });
  return refused && refused->why().kind == Refusal::scanner_file_field_impossible
             ? refused->why().names.at(0)
             : "";
}

TEST(ScannerFile, EverythingComesBack) {
  const ScannerCalibration made = invented();
  const WrittenFile file("scanner.json", scanner_file_text(made));
  const ScannerCalibration read = read_scanner_file(file.path());
  EXPECT_EQ(read.checksum.substr(0, 6), "crc32:");
  // Written again it is the same text: no field was lost or rounded.
  EXPECT_EQ(scanner_file_text(read), scanner_file_text(made));
  EXPECT_EQ(read.method, made.method);
  EXPECT_EQ(read.curves.of_channel[2].code, made.curves.of_channel[2].code);
  EXPECT_EQ(read.doubt[1].stray, 0.0031);
  EXPECT_EQ(read.doubt[1].field, (StrayField{0.30, 0.35, 0.40}));
  EXPECT_EQ(*read.bare_code, *made.bare_code);
  EXPECT_EQ(read.steps[0].corners_px[2].y, 4.0);
  EXPECT_TRUE(std::isinf(read.steps[1].density));
  EXPECT_FALSE(read.steps[1].uncalibrated_density.has_value());
  EXPECT_EQ(read.stray.measured, true);
  EXPECT_EQ(read.callier, 1.1);
  EXPECT_EQ(read.date, "2026-11-26");
}

TEST(ScannerFile, AGreyScannerHasOneCurve) {
  ScannerCalibration grey = invented();
  grey.channels = 1;
  grey.curves.channels = 1;
  grey.bare_code.reset();
  const WrittenFile file("scanner.json", scanner_file_text(grey));
  const ScannerCalibration read = read_scanner_file(file.path());
  EXPECT_EQ(read.channels, 1);
  EXPECT_FALSE(read.bare_code.has_value());
  EXPECT_TRUE(read.curves.of_channel[1].code.empty());
}

TEST(ScannerFile, RefusesStrangersOtherVersionsAndEdits) {
  const std::string good = scanner_file_text(invented());
  EXPECT_EQ(refusal("step,density"), Refusal::scanner_file_no_json);
  EXPECT_EQ(refusal("{\"format\": \"fogline report\"}"), Refusal::no_scanner_file);
  std::string later = good;
  later.replace(later.find("\"version\": 2"), 12, "\"version\": 9");
  EXPECT_EQ(refusal(later), Refusal::scanner_file_of_other_version);
  std::string edited = good;
  edited.replace(edited.find("0.0036"), 6, "0.0001");
  EXPECT_EQ(refusal(edited), Refusal::scanner_file_changed);
  EXPECT_EQ(refusal(std::string(5 << 20, ' ')), Refusal::scanner_file_too_large);
}

TEST(ScannerFile, WhereverItBreaksOffOrAByteFlipsItIsRefused) {
  const std::string good = scanner_file_text(invented());
  for (std::size_t length = 0; length + 2 < good.size(); length += 17) {
    EXPECT_TRUE(refusal(good.substr(0, length))) << length;
  }
  for (std::size_t at = 0; at + 1 < good.size(); at += 13) {
    std::string flipped = good;
    flipped[at] = static_cast<char>(flipped[at] ^ 1);
    // A blank between fields means nothing; everything else is told.
    const bool blank = good[at] == ' ' || good[at] == '\n';
    if (!blank) {
      EXPECT_TRUE(refusal(flipped)) << at;
    }
  }
}

TEST(ScannerFile, RefusesWhatCantBeEvenWithARightChecksum) {
  ScannerCalibration falling = invented();
  falling.curves.of_channel[1].light = {0.5, 0.4, 0.3, 0.2};
  EXPECT_EQ(impossible_field(falling), "light");
  ScannerCalibration without_doubt = invented();
  without_doubt.doubt.clear();
  EXPECT_EQ(impossible_field(without_doubt), "doubt");
  ScannerCalibration two_channels = invented();
  two_channels.channels = 2;
  EXPECT_EQ(impossible_field(two_channels), "channels");
}

}  // namespace
}  // namespace fogline
