#pragma once

#include "density/density_strip.h"
#include "film/film_layout.h"

#include <optional>

namespace fogline {

/// A density read from an area, with the place for the picture.
struct AreaReading {
  double density = 0.0;
  double area_mm2 = 0.0;
  FilmExtent place;
};

/// Density of the edge print of a 135 strip: factory-exposed bars and digits in the outer rebate
/// and between the perforations. Read in the cores of strokes at least 0.3 mm wide (thin strokes
/// blur), as the median of the darker half of core spots. Nothing where less than half a square
/// millimetre of core shows.
std::optional<AreaReading> read_edge_print(const DensityStrip& density, const FilmStrip& film,
                                           double base);

/// Density of the fogged leader: median over the leader less its ends. Nothing without a leader.
std::optional<AreaReading> read_leader(const DensityStrip& density, const FilmStrip& film);

}  // namespace fogline
