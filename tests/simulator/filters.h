// Blurs: an exact small Gaussian for optics and grain, a recursive one for wide glare.
#pragma once

#include "simulator/plane.h"

#include <cstdint>

namespace filmsim {

/// Convolves with a Gaussian of the given standard deviations (pixels) along x and y; weights sum
/// to one, borders are repeated. Below 0.2 px a direction is left alone (the kernel would be one).
void gaussian_blur(Plane& plane, double sigma_x_px, double sigma_y_px);

/// The same for wide kernels: three box passes (close to the Gaussian, its variance to within
/// a sixth of a box's step), time independent of the width.
void wide_blur(Plane& plane, double sigma_x_px, double sigma_y_px);

/// Standard normal noise of unit variance before blurring; blurred by `sigma_px` with weights that
/// sum to one, so that its variance over large areas is that of white noise.
Plane correlated_noise(int width, int height, double sigma_px, std::uint64_t seed);

}  // namespace filmsim
