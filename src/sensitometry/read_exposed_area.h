#pragma once

#include "density/density_strip.h"
#include "film/film_layout.h"

#include <optional>

namespace fogline {

/// Density of an area that should be even: an exposed step, a frame of an even wall.
struct ExposedArea {
  /// Median of its cells of 1 mm, each averaged in transmittance.
  double density = 0.0;
  /// Standard uncertainty of that as the density of the whole, from the cells' scatter: grain and
  /// noise average out, slow unevenness (the taking lens, the lamp) by a part only.
  double doubt = 0.0;
  /// Between the 10th and the 90th percentile of the cells.
  double spread = 0.0;
  FilmExtent place;

  friend bool operator==(const ExposedArea&, const ExposedArea&) = default;
};

/// Reads an area. Nothing where less than half of it is film in sight.
std::optional<ExposedArea> read_exposed_area(const DensityStrip& density, const FilmExtent& area);

/// The middle of a frame that a target is read from: half its length and half its width, where a
/// lens's falloff is least.
FilmExtent middle_of_frame(const FilmFrame& frame);

}  // namespace fogline
