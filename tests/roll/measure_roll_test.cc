// A roll in one call: its scans opened one by one, what can't be read told, its frames numbered
// through.

#include "film/drawn_scan.h"
#include "roll/drawn_source.h"
#include "tables/shipped_knowledge.h"

#include <fogline/base/refusal.h>
#include <fogline/roll/measure_roll.h>

#include <stdexcept>

#include <gtest/gtest.h>

namespace fogline {
namespace {

ScanInfo info_of(const std::string& file) {
  ScanInfo info;
  info.file = file;
  info.bits = 16;
  info.samples_per_pixel = 3;
  info.channels = 3;
  info.transfer = {TransferKind::linear, {}, TransferSource::icc_profile};
  return info;
}

const Raster<float>& two_frames_light() {
  static const Raster<float> light = [] {
    drawn::Strip strip;
    strip.end_mm = 80.0;
    strip.frames = {strip.frame(2.0), strip.frame(40.5)};
    return drawn::light_of(drawn::scan_of(strip));
  }();
  return light;
}

/// Knows how many of its kind are alive.
class CountedSource final : public drawn::DrawnSource {
 public:
  CountedSource(const std::string& file, int& alive)
      : DrawnSource(two_frames_light(), info_of(file), false), alive_(alive) {
    ++alive_;
  }
  CountedSource(const CountedSource&) = delete;
  CountedSource& operator=(const CountedSource&) = delete;
  CountedSource(CountedSource&&) = delete;
  CountedSource& operator=(CountedSource&&) = delete;
  ~CountedSource() override { --alive_; }

 private:
  int& alive_;
};

TEST(MeasureRoll, OpensScansOneByOneAndTellsWhatCannotBeRead) {
  int alive = 0;
  std::vector<std::string> failures;
  const auto scan = [&](const std::string& file) {
    return RollScan{file,
                    [&alive, file]() -> std::unique_ptr<ScanSource> {
                      EXPECT_EQ(alive, 0) << file;
                      if (file == "gone") {
                        throw FileError(file, Refusal::scan_is_folder);
                      }
                      return std::make_unique<CountedSource>(file, alive);
                    },
                    {},
                    [&](const FileError& failure) { failures.push_back(failure.file()); }};
  };
  const MeasuredRoll roll =
      measure_roll({scan("one"), scan("gone"), scan("two")}, shipped_options());
  EXPECT_EQ(alive, 0);
  EXPECT_EQ(failures, std::vector<std::string>{"gone"});
  const RollMeasurement& measured = roll.measurement;
  ASSERT_EQ(measured.unread.size(), 1U);
  EXPECT_EQ(measured.unread[0].file, "gone");
  EXPECT_EQ(measured.unread[0].why.kind, Refusal::scan_is_folder);
  ASSERT_EQ(measured.scans.size(), 2U);
  EXPECT_EQ(roll.pictures.size(), 2U);
  EXPECT_EQ(measured.scans[0].info.file, "one");
  EXPECT_EQ(measured.scans[1].info.file, "two");
  int number = 1;
  for (const ScanMeasurement& one : measured.scans) {
    for (const FrameMeasurement& frame : one.frames) {
      EXPECT_EQ(frame.number, number++);
    }
  }
  EXPECT_EQ(number, 5);
  // The same pictures again: each counts once.
  EXPECT_EQ(measured.medians->frames, 2);
  EXPECT_EQ(measured.scans[1].frames[1].repeats_frame, 2);
}

TEST(MeasureRoll, ReadsABlankForEachScan) {
  MeasureOptions options = shipped_options();
  options.blank = std::make_shared<drawn::DrawnSource>(
      Raster<float>(two_frames_light().width(), two_frames_light().height(), 1, 0.9F),
      info_of("blank"), false);
  drawn::DrawnSource scan(two_frames_light(), info_of("film"), false);
  EXPECT_FALSE(measure_roll(scan, options).measurement.scans[0].frames.empty());
  options.blank =
      std::make_shared<drawn::DrawnSource>(Raster<float>(60, 40, 1, 0.9F), info_of("other"), false);
  EXPECT_THROW(measure_roll(scan, options), FileError);
}

void expect_refused(const MeasureOptions& options) {
  EXPECT_THROW(options.check(), std::invalid_argument);
  EXPECT_THROW(measure_roll({}, options), std::invalid_argument);
}

TEST(MeasureOptions, RefuseWhatCannotBeMeant) {
  EXPECT_NO_THROW(shipped_options().check());
  expect_refused(MeasureOptions{});
  MeasureOptions options = shipped_options();
  options.frame_mm = 0.0;
  expect_refused(options);
  options = shipped_options();
  options.base_tint = PerChannel<double>{0.2, NAN, 0.2};
  expect_refused(options);
  options = shipped_options();
  options.target = ExposureTarget{};
  EXPECT_NO_THROW(options.check());
  options.target->bracket = BracketTarget{{-1, 0, 1}, {0.1, 0.1}, {}};
  expect_refused(options);
  options.target->bracket = BracketTarget{{}, {}, {}};
  expect_refused(options);
  options.target->bracket = BracketTarget{{0, 1}, {0.1, -0.1}, {}};
  expect_refused(options);
  options.target->bracket.reset();
  options.target->areas = {{{10, 10, 0, 5}, 1.0}};
  expect_refused(options);
}

}  // namespace
}  // namespace fogline
