#pragma once

#include <fogline/base/caution.h>
#include <fogline/base/known.h>
#include <fogline/base/quantity.h>
#include <fogline/base/refusal.h>
#include <fogline/roll/scan_measurement.h>
#include <fogline/sensitometry/film_tones.h>
#include <fogline/sensitometry/sensitometry.h>

#include <string>
#include <vector>

namespace fogline {

/// Medians over all frames of the roll; net values are above base plus fog. The net values are
/// absent where no frame's scan tells base plus fog.
struct RollMedians {
  int frames = 0;
  Known<Quantity> shadow = Unknown::scan_silent;
  Known<Quantity> middle = Unknown::scan_silent;
  Known<Quantity> highlight = Unknown::scan_silent;
  Known<Quantity> range = Unknown::scan_silent;
  Known<Quantity> net_shadow = Unknown::scan_silent;
  Known<Quantity> net_middle = Unknown::scan_silent;
  Known<Quantity> net_highlight = Unknown::scan_silent;

  friend bool operator==(const RollMedians&, const RollMedians&) = default;
};

/// A file that could not be read, and why.
struct UnreadFile {
  std::string file;
  Fact<Refusal> why;

  friend bool operator==(const UnreadFile&, const UnreadFile&) = default;
};

/// What the scans of one roll say, in the order given: results alone.
struct RollMeasurement {
  std::vector<ScanMeasurement> scans;
  std::vector<UnreadFile> unread;
  Known<RollMedians> medians = Unknown::no_frame_read;
  ContrastEstimate contrast;
  /// Where the roll has a target that could be read.
  Known<Sensitometry> sensitometry = Unknown::no_target;
  /// Cautions about the target.
  std::vector<Caution> target_cautions;

  friend bool operator==(const RollMeasurement&, const RollMeasurement&) = default;
};

}  // namespace fogline
