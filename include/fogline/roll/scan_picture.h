#pragma once

#include <fogline/base/raster.h>

#include <cstdint>
#include <vector>

namespace fogline {

/// A small display picture of the scan (sRGB, 8 bits, 1 or 3 channels).
struct ScanPicture {
  Raster<std::uint8_t> pixels;
  /// Stored pixels of the scan a picture pixel.
  double scan_px_per_pixel = 1.0;
};

/// What an outline drawn over the scan's picture shows.
enum class OutlineKind {
  strip,        ///< edge of a piece of film
  perforation,  ///< a perforation, whole or partly hidden
  frame,        ///< border of a frame
  tone_area,    ///< part of a frame whose tone was read
  clear_film,   ///< unexposed film where base plus fog was read
  light_path,   ///< bare light where density zero was read
  edge_print,   ///< factory-exposed edge print
  leader,       ///< fogged leader
  opaque,       ///< opaque surround where stray light was read
  exposed_step  ///< area of known exposure, read for the characteristic curve
};

/// A closed outline in stored pixels, drawn on the report's picture so that the reader sees where
/// each number comes from.
struct Outline {
  OutlineKind kind = OutlineKind::frame;
  std::vector<PointPx> points;
  int strip = 0;
  /// Number of the frame for frame and tone_area, else 0.
  int number = 0;
  /// Inferred, hidden or cut: drawn with a dash.
  bool partial = false;

  friend bool operator==(const Outline&, const Outline&) = default;
};

}  // namespace fogline
