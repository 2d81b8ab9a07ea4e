// Where things are on a piece of film, and where the film lies on the glass.
//
// Film coordinates: u along the film from its left (upper) end, v across from its upper (right)
// edge, in nominal millimetres; shrinkage is applied on the way to the glass.
#pragma once

#include "simulator/geometry.h"

#include <vector>

namespace filmsim {

/// 127 and 110 only by their widths: as cut film without perforations.
enum class FilmFormat { k135, k120, kSheet, k127, k110 };
enum class FilmAxis { kX, kY };

// Dimensions of 135 film (values of ISO 1007 and SMPTE 139, written from memory).
inline constexpr double k135WidthMm = 34.975;
inline constexpr double k135PitchMm = 4.750;
inline constexpr double k135HoleAcrossMm = 2.794;
inline constexpr double k135HoleAlongMm = 1.981;
inline constexpr double k135HoleCornerMm = 0.5;
inline constexpr double k135HoleMarginMm = 2.01;  // film edge to hole edge
inline constexpr double k135FramePitchMm = 38.0;
inline constexpr double k120WidthMm = 61.5;
inline constexpr double k127WidthMm = 46.0;
inline constexpr double k110WidthMm = 16.0;
inline constexpr double kSheetLengthMm = 125.4;
inline constexpr double kSheetWidthMm = 100.0;
inline constexpr double kSheetRebateMm = 2.5;

double film_width_mm(FilmFormat format);
const char* film_format_name(FilmFormat format);

struct StripGeometrySettings {
  FilmFormat format = FilmFormat::k135;
  FilmAxis axis = FilmAxis::kX;
  Point middle_mm;  ///< middle of the strip on the glass, from the picture's middle
  double length_mm = 114.0;
  double rotation_deg = 0.0;   ///< clockwise from the axis
  double hole_phase_mm = 1.0;  ///< middle of the first hole from the strip's end
  double shrinkage = 0.0;      ///< 0.002: everything is 0.2 % smaller
  double bow_mm = 0.0;         ///< sideways bend at mid-length
  double tongue_mm = 0.0;      ///< length of the leader's tongue cut at the left end; 0: none
  bool notch = false;          ///< code notch of a sheet
};

class StripGeometry {
 public:
  explicit StripGeometry(const StripGeometrySettings& settings);

  [[nodiscard]] Point film_from_glass(Point mm) const;
  [[nodiscard]] Point glass_from_film(Point film_mm) const;

  /// Distance (mm) to the film's outline, holes ignored; negative on the film.
  [[nodiscard]] double outline_distance(Point film_mm) const;
  /// Distance (mm) to the nearest hole's border; negative inside a hole, large without holes.
  [[nodiscard]] double hole_distance(Point film_mm) const;
  /// Middles of all holes, upper row then lower row, each along the film.
  [[nodiscard]] std::vector<Point> hole_middles() const;

  [[nodiscard]] double width_mm() const { return width_mm_; }
  [[nodiscard]] double length_mm() const { return settings_.length_mm; }
  [[nodiscard]] const StripGeometrySettings& settings() const { return settings_; }

 private:
  StripGeometrySettings settings_;
  double width_mm_;
  Point along_;  // unit vector of u on the glass
};

}  // namespace filmsim
