#pragma once

#include "film/film_map.h"

#include <fogline/base/raster.h>
#include <fogline/film/film_format.h>

#include <optional>
#include <vector>

namespace fogline {

/// Published dimensions of 135 film in mm (ISO 1007; values from memory, see tests).
namespace film_135 {
inline constexpr double width_mm = 34.975;
inline constexpr double pitch_mm = 4.750;
inline constexpr double hole_along_mm = 1.981;
inline constexpr double hole_across_mm = 2.794;
inline constexpr double hole_to_edge_mm = 2.01;
/// Middle line of the film to the middle line of a row of perforations.
inline constexpr double row_across_mm = width_mm / 2.0 - hole_to_edge_mm - hole_across_mm / 2.0;
inline constexpr double frame_across_mm = 24.0;
inline constexpr double frame_along_mm = 36.0;
inline constexpr double frame_pitch_mm = 8.0 * pitch_mm;
}  // namespace film_135

/// Width of 120 film in mm (ISO 732; from memory), and of the image on it.
namespace film_120 {
inline constexpr double width_mm = 61.5;
inline constexpr double frame_across_mm = 56.0;
}  // namespace film_120

/// A rectangle in a strip's own millimetres.
struct FilmExtent {
  double along_begin_mm = 0.0;
  double along_end_mm = 0.0;
  double across_begin_mm = 0.0;
  double across_end_mm = 0.0;

  friend bool operator==(const FilmExtent&, const FilmExtent&) = default;
};

/// One perforation as seen.
struct Perforation {
  PointMm film;
  PointPx scan;
  /// -1: the row at negative across_mm, +1: the other.
  int row = 0;
  /// Size seen, mm.
  double along_mm = 0.0;
  double across_mm = 0.0;
  /// Seen in its full size; a hole partly covered by a holder or cut by the border is not.
  bool whole = true;
};

/// One frame: a rectangle on the film.
struct FilmFrame {
  double along_begin_mm = 0.0;
  double along_end_mm = 0.0;
  double across_begin_mm = 0.0;
  double across_end_mm = 0.0;
  /// Placed by its neighbours only.
  bool inferred = false;
  /// Cut off by the image border, the holder or the end of the film; the extents above are then
  /// those of the part in sight.
  bool cut = false;
  /// Overlaps a neighbour: shares film with it.
  bool overlaps = false;
  /// Borders across the film that show over most of the height with clear film beside them, 0 to 2:
  /// the evidence that this is a frame and not any dark thing.
  int clear_borders = 0;
};

/// What lies around a strip.
enum class Surround { bare_light, opaque, image_border };

/// One piece of film.
struct FilmStrip {
  FilmFormat format = FilmFormat::unknown;
  FilmMap map;
  /// False where neither perforations nor a resolution tag nor a known width gave the scale: the
  /// map's millimetres are then a guess.
  bool scale_known = true;
  /// Part of the film in sight.
  double along_begin_mm = 0.0;
  double along_end_mm = 0.0;
  double across_begin_mm = 0.0;
  double across_end_mm = 0.0;
  std::vector<Perforation> perforations;
  std::vector<FilmFrame> frames;
  Surround surround = Surround::image_border;
  /// Corners of the holder's window in stored pixels, where the film is seen through one and may
  /// lie askew in it; empty otherwise. Nothing outside it is film.
  std::vector<PointPx> window;
  /// Fogged leaders or trailers: film dense from edge to edge, rebate included.
  std::vector<FilmExtent> leaders;
  /// Stretches of bare light beside the film, in the strip's own millimetres.
  std::vector<FilmExtent> bare_light;
  /// Share of the rebate beside the perforations that reads as clear film, on the better side; 0
  /// without perforations.
  double clear_rebate_share = 0.0;
  /// Density of clear film above the brightest light of the scan, log light only: a starting value
  /// for the stages that know zero.
  double clear_log_light = 0.0;
};

/// Whether the scan shows a negative as it is, or its tones turned over.
enum class Polarity { negative, inverted, unknown };

/// All film found in a scan, top to bottom or left to right.
struct FilmLayout {
  Polarity polarity = Polarity::unknown;
  std::vector<FilmStrip> strips;
  /// From perforations, else a known film width, else the resolution tag.
  std::optional<double> pixels_per_mm;
};

}  // namespace fogline
