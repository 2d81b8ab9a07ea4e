#pragma once

#include <array>

namespace fogline {

/// A point of the image as stored: origin at the top left corner of the top left pixel, x to the
/// right, y down, in stored pixels (not reduced ones).
struct PointPx {
  double x = 0.0;
  double y = 0.0;

  friend bool operator==(const PointPx&, const PointPx&) = default;
};

/// Middle of a four-cornered area: the mean of its corners.
constexpr PointPx middle_of(const std::array<PointPx, 4>& corners) {
  PointPx middle;
  for (const PointPx& corner : corners) {
    middle.x += 0.25 * corner.x;
    middle.y += 0.25 * corner.y;
  }
  return middle;
}

/// A point on the film: millimetres along the film and across it. Across is 0 on the middle line
/// of the strip and grows to the right of the direction of growing `along_mm` (as y grows down
/// when along runs to the right). The origin of `along_mm` is each strip's own.
struct PointMm {
  double along_mm = 0.0;
  double across_mm = 0.0;

  friend bool operator==(const PointMm&, const PointMm&) = default;
};

/// An upright box of the image as stored, in stored pixels.
struct BoxPx {
  double x = 0.0;
  double y = 0.0;
  double width = 0.0;
  double height = 0.0;

  friend bool operator==(const BoxPx&, const BoxPx&) = default;
};

/// Whole pixels of the image as stored: columns [x, x + width), rows [y, y + height).
struct RegionPx {
  int x = 0;
  int y = 0;
  int width = 0;
  int height = 0;

  friend bool operator==(const RegionPx&, const RegionPx&) = default;
};

}  // namespace fogline
