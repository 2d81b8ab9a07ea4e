#pragma once

#include "words/mark_list.h"

#include <fogline/base/raster.h>

#include <vector>

namespace fogline {

/// Side of a picture's window at which a mark's number stands, outside the picture.
enum class LabelSide { top, bottom, left, right };

/// A straight piece of a line, pixels of the picture.
struct LinePiece {
  PointPx from;
  PointPx to;
};

/// The number of one mark beside a window of the picture, and the line that leads to the mark.
/// Lengths are pixels of the picture.
struct MarkLabel {
  int number = 0;
  LabelSide side = LabelSide::top;
  /// Where the number stands, off the window's edge.
  PointPx place;
  /// From there to the window's edge, then straight to the rim of the mark's outline. It enters no
  /// outline, neither this mark's nor another's: there it is broken off.
  std::vector<LinePiece> line;
};

/// A mark's outline in pixels of the picture: its box with some room, so that the line doesn't lie
/// on the mark. `scale`: stored pixels a picture pixel.
BoxPx mark_outline(const Mark& mark, double scale);

/// Places the numbers of the marks that reach into `window` (pixels of the picture) along its two
/// long sides, each as near to its mark as the others leave room. Numbers keep `room_share` of the
/// side's length between them. Where there are more marks than room, the least sure stay without.
std::vector<MarkLabel> place_labels(const std::vector<NumberedMark>& marks, double scale,
                                    const BoxPx& window, double room_share);

}  // namespace fogline
