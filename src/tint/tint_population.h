#pragma once

#include <fogline/base/channels.h>
#include <fogline/tint/tint.h>

#include <vector>

namespace fogline {

// What is believed of clean bases and of tints before a scan is seen. Stated populations, each with
// its reason; where no source is named they are common practice, no source.

/// A value that a population takes, with its share.
struct Weighted {
  double value = 0.0;
  double weight = 1.0;
};

/// Density per channel as a share of the most absorbing one.
struct TintSignature {
  PerChannel<double> share{};
  double weight = 1.0;
};

/// One kind of veil over the whole film.
struct VeilPopulation {
  TintKind kind = TintKind::none;
  /// Amount in the most absorbing channel: log-uniform between these.
  double least_density = 0.0;
  double most_density = 0.0;
  /// Weights sum to 1.
  std::vector<TintSignature> signatures;
  /// Standard deviation over the film as a share of the amount; weights sum to 1.
  std::vector<Weighted> patchiness;
};

const VeilPopulation& dye_population();
const VeilPopulation& haze_population();
const VeilPopulation& yellow_population();
/// Masked colour stock: no tint, but mistaken for a strong one.
const VeilPopulation& mask_population();

/// Grey bases have a little colour of their own: standard deviation of a channel, where the stock
/// is unknown and where the roll card tells its base. Two channels are within 0.02 of each other in
/// 95 of 100 stocks (common practice, no source), so 0.02 / (1.96 sqrt 2) a channel. Bluish bases
/// lie beyond; what shows of them is told, and that it may be the stock's own.
inline constexpr double own_sd_density = 0.0072;
inline constexpr double told_base_sd_density = 0.003;
/// Texture of clean film in (blue - red): standard deviations, weights sum to 1.
const std::vector<Weighted>& clean_textures();

/// Shares of rolls, by what veils them. Half of what is milky has dye left as well: both come of
/// short fixing.
struct VeilShares {
  double none = 0.80;
  double dye = 0.08;
  double haze = 0.04;
  double yellow = 0.045;
  double dye_and_haze = 0.02;
  double dye_and_yellow = 0.005;
  double mask = 0.01;
};

/// Image-wise stain: share of rolls, blue density gained at a silver density of 1 (log-uniform),
/// and green's share of it.
inline constexpr double stain_share = 0.05;
inline constexpr double least_stain = 0.06;
inline constexpr double most_stain = 0.8;
const std::vector<Weighted>& stain_green_shares();
/// Silver isn't quite neutral: fine grain absorbs blue a little more. Standard deviation of a slope
/// about 1.
inline constexpr double natural_slope_sd = 0.02;

}  // namespace fogline
