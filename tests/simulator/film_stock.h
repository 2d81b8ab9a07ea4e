// An invented film as it hangs after washing: its base, its fog, its grain, what is left in it.
#pragma once

#include "simulator/film_curve.h"

#include <array>
#include <cmath>

namespace filmsim {

using Rgb = std::array<double, 3>;

struct FilmStock {
  Rgb base = {0.25, 0.25, 0.25};  ///< density of the clean base per channel; no silver
  double fog = 0.05;              ///< silver density of unexposed film, 0.02 to 0.3
  CurveSettings curve;

  /// Selwyn's law: sd of density over an area A (mm^2) is granularity * sqrt(D) / sqrt(A), for
  /// areas well above the grain; 4e-4 is fine, 9e-4 coarse (D mm).
  double granularity = 6e-4;
  double grain_um = 8.0;  ///< sd of the grain's own blur, 4 to 12

  Rgb dye_left = {0.0, 0.0, 0.0};      ///< even dye left by short fixing or washing
  Rgb yellow_stain = {0.0, 0.0, 0.0};  ///< even stain
  Rgb haze = {0.0, 0.0, 0.0};          ///< mean density of a milky, patchy veil
  Rgb image_stain = {0.0, 0.0, 0.0};   ///< density gained per unit of net silver density

  /// Log exposure of the factory's edge print, from the speed point; about 1 to 2.2.
  double edge_print_log_h = 1.5;
};

/// Everything that lies evenly over unexposed film, haze by its mean.
inline Rgb clear_density(const FilmStock& stock) {
  Rgb sum{};
  for (std::size_t c = 0; c < sum.size(); ++c) {
    sum[c] = stock.base[c] + stock.fog + stock.dye_left[c] + stock.yellow_stain[c] + stock.haze[c];
  }
  return sum;
}

/// Visual diffuse density above the bare light where the film has a net silver density: a staining
/// developer's dye counts, and so does what lies over clear film.
inline double visual_density(const FilmStock& stock, double net_silver_density) {
  constexpr Rgb kWeights = {0.2126, 0.7152, 0.0722};
  const Rgb clear = clear_density(stock);
  double transmittance = 0.0;
  for (std::size_t c = 0; c < clear.size(); ++c) {
    const double density = clear[c] + net_silver_density * (1.0 + stock.image_stain[c]);
    transmittance += kWeights[c] * std::pow(10.0, -density);
  }
  return -std::log10(transmittance);
}

}  // namespace filmsim
