// The factory's print along the edges: numbers, bars, a bar code, as light on the film.
#pragma once

#include "simulator/geometry.h"
#include "simulator/strip_geometry.h"

#include <vector>

namespace filmsim {

class EdgePrint {
 public:
  EdgePrint() = default;
  /// Numbers count up from `first_number` at each `pitch_mm` along the film, the first at
  /// `first_u_mm`; bars and bar code follow from the numbers, blocks lie between holes.
  EdgePrint(const StripGeometrySettings& film, double first_u_mm, double pitch_mm,
            int first_number);

  /// Share of the print's exposure at a point, in [0, 1]; edges are soft over 0.05 mm.
  [[nodiscard]] float share(Point film_mm) const;
  [[nodiscard]] bool empty() const { return boxes_.empty(); }

 private:
  void add(Box box);
  void add_blocks_between_holes(const StripGeometrySettings& film, double u);
  void add_number(int number, double u, double v, double height);
  void add_bar_code(int number, double u, double v, double height);
  void sort_into_bins(double length_mm);

  std::vector<Box> boxes_;
  std::vector<std::vector<int>> bins_;  // boxes that touch each millimetre of the film
};

}  // namespace filmsim
