// The best that could be told of a tint from colour alone, the stock unknown.
#pragma once

#include "tint_case.h"

#include <array>

namespace bench {

/// Bounds of the bands of amount that the tables are split by: 0.02 to 0.04, to 0.08, above.
inline constexpr std::array<double, 2> band_ends{0.04, 0.08};
inline constexpr int bands = 3;
int band_of(double amount);

/// Share of a family's tints in each band that the likelihood ratio with the simulator's own
/// distributions of bases and tints tells from a clean base at 1 % false alarms, if the colour of
/// clear film is read without any error. Slopes and texture are left out: image stain doesn't show
/// in it, and haze would show in its texture.
std::array<std::array<double, bands>, tint_families> seen_at_best();

}  // namespace bench
