#pragma once

#include <fogline/base/quantity.h>
#include <fogline/base/raster.h>
#include <fogline/base/scan_source.h>

#include <array>
#include <optional>
#include <vector>

namespace fogline {

/// One step of a photographic step wedge, as seen.
struct WedgeStep {
  /// The area that was read, well inside the step: clockwise from top left, stored pixels.
  std::array<PointPx, 4> corners_px{};
  /// Median light of that area per channel, by the scan's transfer.
  PerChannel<double> light{};
  /// Standard uncertainty of that light: noise, grain and unevenness, from the scatter of the
  /// area's parts.
  PerChannel<double> light_doubt{};
  /// Share of its pixels at the top code, per channel.
  PerChannel<double> clipped_share{};
  /// Place in the row, counted in whole pitches from the lightest step found (0): a gap in the
  /// numbers is a step that could not be seen. On wedges of uneven pitch simply 0, 1, 2, ...
  int slot = 0;
};

/// A row of steps, lightest first.
struct FoundWedge {
  std::vector<WedgeStep> steps;
  /// The steps touch; false for loose strips and steps with dark or clear joints.
  bool touching = true;
  /// Steps too dark to be told apart between the last one found and the end of the film; absent
  /// where no bare light shows that end, or where it isn't a whole number of steps away.
  std::optional<int> unseen_dark_steps;
  /// Even bare light beside it (median, per channel), absent where none is in sight.
  std::optional<PerChannel<double>> bare_light;
  /// Where that bare light was read.
  std::array<PointPx, 4> bare_corners_px{};
  /// Share of it at the top code, greatest of the channels.
  double bare_clipped_share = 0.0;
};

/// Numbers of steps that a wedge may have.
inline constexpr int fewest_wedge_steps = 5;
inline constexpr int most_wedge_steps = 41;

/// What a search found: wedges, that with the most steps first.
struct WedgeSearch {
  std::vector<FoundWedge> wedges;
};

/// Finds photographic step wedges: rows of 5 to 41 even areas of one size whose light falls from
/// one to the next, touching or apart, at any pitch, lying along either axis and turned up to 3
/// degrees and more. Scratches, dust, tape and dark joints between steps don't break a row.
WedgeSearch find_wedges(const ScanGrid& grid);

/// Outline of the film on which a wedge's steps lie, stored pixels: the row itself and so many
/// pitches before its first and after its last step (steps too dark or too light to be told from
/// their neighbours). What lies in it is film, however dense, and never an opaque mask.
std::vector<PointPx> outline_of(const FoundWedge& wedge, int slots_before, int slots_after);

}  // namespace fogline
