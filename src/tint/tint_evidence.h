#pragma once

#include "tint/judge_tint.h"

#include <array>
#include <optional>
#include <vector>

namespace fogline {

/// Two numbers that hold all of a colour that is no neutral rise: coordinates across the grey axis,
/// blue against red and green against both.
using Contrast = std::array<double, 2>;
Contrast contrast_of(const PerChannel<double>& density);

/// What the strips of a scan say together.
struct TintEvidence {
  Contrast clear{};
  /// Standard uncertainty of each coordinate, own colour of the base left out: reading and zero.
  double clear_sd = 0.0;
  /// Clear film above the least absorbing channel, density.
  double strongest_density = 0.0;
  bool base_told = false;
  /// Texture, noise's share in it, and its degrees of freedom; 0: none read.
  double texture_variance = 0.0;
  double texture_noise_variance = 0.0;
  double texture_freedom = 0.0;
  struct Slopes {
    double green = 1.0;
    double blue = 1.0;
    double sd = 0.0;
  };
  std::optional<Slopes> slopes;
  /// Directed light may add this share to silver's density (95 of 100).
  double angle_share_95 = 0.0;
};

/// `strips` must not be empty.
TintEvidence join_tint_signs(const std::vector<TintSigns>& strips, const TintLimits& limits);

}  // namespace fogline
