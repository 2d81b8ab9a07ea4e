#include "roll/join_scans.h"

#include <fogline/roll/measure_roll.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

namespace fogline {

namespace {

void require(bool holds, const char* what) {
  if (!holds) {
    throw std::invalid_argument(what);
  }
}

void check_target(const ExposureTarget& target) {
  if (target.bracket) {
    const BracketTarget& bracket = *target.bracket;
    require(!bracket.stops.empty(), "bracket-empty");
    require(bracket.stops.size() == bracket.doubt_stops.size(), "bracket-doubts");
    require(std::all_of(bracket.doubt_stops.begin(), bracket.doubt_stops.end(),
                        [](double doubt) { return doubt >= 0.0; }),
            "bracket-doubts");
  }
  for (const MarkedArea& area : target.areas) {
    require(area.box_px.width > 0.0 && area.box_px.height > 0.0, "area-empty");
  }
  require(target.area_doubt_stops >= 0.0, "area-doubt");
}

}  // namespace

void MeasureOptions::check() const {
  require(knowledge != nullptr, "knowledge-missing");
  require(!frame_mm || *frame_mm > 0.0, "frame-length");
  require(!base_tint || std::all_of(base_tint->begin(), base_tint->end(),
                                    [](double density) { return std::isfinite(density); }),
          "base-tint");
  if (target) {
    check_target(*target);
  }
}

// A roll's story: each scan is read by itself (read_one_scan), then what they say is joined.
MeasuredRoll measure_roll(const std::vector<RollScan>& scans, const MeasureOptions& options) {
  options.check();
  std::vector<ScanReading> readings;
  std::vector<UnreadFile> unread;
  int next_frame = 1;
  for (const RollScan& scan : scans) {
    try {
      const std::unique_ptr<ScanSource> source = scan.open();
      readings.push_back(read_one_scan(*source, options, next_frame, scan.progress));
      next_frame += static_cast<int>(readings.back().scan.frames.size());
    } catch (const FileError& failure) {
      unread.push_back({scan.file, failure.why()});
      if (scan.on_failure) {
        scan.on_failure(failure);
      }
    }
  }
  MeasuredRoll roll = join_scans(std::move(readings), options.target);
  roll.measurement.unread = std::move(unread);
  return roll;
}

MeasuredRoll measure_roll(ScanSource& scan, const MeasureOptions& options) {
  options.check();
  std::vector<ScanReading> readings;
  readings.push_back(read_one_scan(scan, options, 1, {}));
  return join_scans(std::move(readings), options.target);
}

}  // namespace fogline
