#pragma once

#include "film/film_knowledge.h"

#include <fogline/film/film_format.h>

namespace fogline {

/// How much of base plus fog is silver, density: the part that the angle of light touches.
struct ClearSilver {
  /// What is more than film of its format usually has is fog.
  double likely = 0.0;
  /// As much as it may be where the base below the fog is a clear one.
  double greatest = 0.0;
};

/// Base plus fog as film usually has it holds a little fog. From 2.75 standard deviations above
/// that on (0.44 on 135 film, where the densest bases end) more and more of the excess counts as
/// silver (common practice, no source).
ClearSilver silver_in_clear_film(double base_fog, FilmFormat format, const FilmKnowledge& films);

}  // namespace fogline
