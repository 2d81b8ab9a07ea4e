#pragma once

#include "sensitometry/read_exposed_area.h"

#include <fogline/base/known.h>
#include <fogline/base/quantity.h>
#include <fogline/base/raster.h>
#include <fogline/sensitometry/characteristic_curve.h>

#include <array>
#include <optional>
#include <vector>

namespace fogline {

/// An area of known exposure as read.
struct ExposedReading {
  ExposedArea area;
  int strip = 0;
  Quantity density;
  /// Clockwise from top left.
  std::array<PointPx, 4> corners_px{};
  BoxPx box_px;
  /// Index into the steps of the wedge that it was exposed through, or the area's own; -1: none.
  int target_index = -1;
};

/// What net densities of one strip rest on.
struct NetDoubts {
  /// Base plus fog, above the same zero as the strip's densities, and its standard uncertainty
  /// against areas in mid-strip.
  double base = 0.0;
  double base_doubt = 0.0;
  /// Standard uncertainty of every area alone, besides its own scatter.
  double own = 0.0;
  std::vector<CommonDoubt> common;
  /// Net density up to which the scan tells within 0.1.
  double limit = 0.0;
};

/// What a target needs of one strip.
struct StripExposures {
  /// Absent where the strip has no clear film.
  std::optional<NetDoubts> net_doubts;
  /// Film where frames too thin to be found would lie before the first and after the last, nearest
  /// first.
  std::vector<ExposedReading> before_frames;
  std::vector<ExposedReading> after_frames;
};

/// What a target needs of one scan.
struct ScanExposures {
  /// One for each strip and for each frame of the scan; a frame's middle is read as an even area.
  std::vector<StripExposures> strips;
  std::vector<std::optional<ExposedReading>> frames;
  /// Steps of a wedge printed on the film, least exposed first.
  Known<std::vector<ExposedReading>> wedge;
  /// Which step of its wedge the most exposed one is isn't sure: the curve may be shifted.
  bool wedge_place_doubtful = false;
  /// In the order given.
  std::vector<ExposedReading> marked_areas;
};

}  // namespace fogline
