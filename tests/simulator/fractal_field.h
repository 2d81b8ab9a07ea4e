// Random fields whose spectrum falls like a power of frequency, as nature's do.
#pragma once

#include "simulator/plane.h"
#include "simulator/random.h"

namespace filmsim {

/// Zero mean, unit standard deviation. Octaves of smoothly interpolated lattice noise from
/// `coarsest_px` down to about 2 px, each finer one weaker by 2^-roughness: 0.5 is rocky, 1 is
/// cloud-like (the amplitude spectrum of real scenes, about 1/f, is near 1).
Plane fractal_field(int width, int height, double coarsest_px, double roughness, Random& random);

/// The same along a line: ridges, skylines.
std::vector<float> fractal_line(int length, double coarsest_px, double roughness, Random& random);

}  // namespace filmsim
