// The film as it lies before the lamp, pixel by pixel, before any scanner: silver, dye, dirt,
// holes and the holder's openings.
#pragma once

#include "simulator/plane.h"
#include "simulator/scenario.h"
#include "simulator/strip_geometry.h"

#include <vector>

namespace filmsim {

struct FilmPlanes {
  Plane net;        ///< net silver density, grain included, marks included
  Plane clean_net;  ///< the same without marks
  Plane film;       ///< share of the pixel that is film (holes are not), 0 to 1
  Plane open;       ///< share of the pixel inside the holder's windows
  Plane added;      ///< density of dirt and drying marks, neutral
  Plane haze;       ///< pattern of the milky veil, mean 1 (empty where no stock has one)
  std::vector<unsigned char> strip;  ///< 0: none, else 1 + index of the strip (holes included)
  std::vector<unsigned char> what;   ///< Exposed flags
};

/// Fields of one mark as it came out.
struct DrawnMark {
  int strip = 0;  ///< index
  MarkPlan plan;
  Box box_px;
  double area_mm2 = 0.0;
  double contrast_density = 0.0;
  bool visible = false;
};

FilmPlanes lay_film(const Scenario& scenario, const CameraGeometry& camera,
                    const std::vector<StripGeometry>& geometries);

/// Adds grain by Selwyn's law to both net planes.
void add_grain(FilmPlanes& planes, const Scenario& scenario);

std::vector<DrawnMark> draw_marks(FilmPlanes& planes, const Scenario& scenario,
                                  const CameraGeometry& camera,
                                  const std::vector<StripGeometry>& geometries);

/// Diffuse density of a film pixel in a channel (0 red, 1 green, 2 blue), without dirt and marks.
double diffuse_density(const FilmPlanes& planes, const FilmStock& stock, std::size_t pixel,
                       std::size_t channel);

}  // namespace filmsim
