#pragma once

#include <fogline/base/quantity.h>

#include <vector>

namespace fogline {

/// A value that a population takes, with its share.
struct Weighted {
  double value = 0.0;
  double weight = 0.0;

  bool operator==(const Weighted&) const = default;
};

/// Density per channel as a share of the most absorbing one.
struct TintSignature {
  PerChannel<double> share{};
  double weight = 0.0;

  bool operator==(const TintSignature&) const = default;
};

/// One kind of veil over the whole film.
struct VeilPopulation {
  /// Amount in the most absorbing channel: log-uniform between these.
  double least_density = 0.0;
  double most_density = 0.0;
  /// Weights sum to 1.
  std::vector<TintSignature> signatures;
  /// Standard deviation over the film as a share of the amount; weights sum to 1.
  std::vector<Weighted> patchiness;

  bool operator==(const VeilPopulation&) const = default;
};

/// Shares of rolls, by what veils them; they sum to 1.
struct VeilShares {
  double none = 0.0;
  double dye = 0.0;
  double haze = 0.0;
  double yellow = 0.0;
  double dye_and_haze = 0.0;
  double dye_and_yellow = 0.0;
  double mask = 0.0;

  bool operator==(const VeilShares&) const = default;
};

/// Image-wise stain: share of rolls, blue density gained at a silver density of 1 (log-uniform
/// between the two), and green's share of it (weights sum to 1).
struct StainPopulation {
  double share = 0.0;
  double least = 0.0;
  double most = 0.0;
  std::vector<Weighted> green_shares;

  bool operator==(const StainPopulation&) const = default;
};

/// What is believed of clean bases and of tints before a scan is seen. Shipped in
/// `calibration/tints.toml`, each table with its source; a default one holds nothing.
struct TintKnowledge {
  VeilPopulation dye;
  VeilPopulation haze;
  VeilPopulation yellow;
  /// Masked colour stock: no tint, but mistaken for a strong one.
  VeilPopulation mask;
  VeilShares shares;
  /// Channels of pictures stray from one another by more in colour film only, density.
  double colour_film_hues_density = 0.0;
  StainPopulation stain;
  /// Own colour of a grey base: standard deviation of a channel, where the stock is unknown and
  /// where the roll card tells its base.
  double own_sd_density = 0.0;
  double told_base_sd_density = 0.0;
  /// Texture of clean film in (blue - red): standard deviations, weights sum to 1.
  std::vector<Weighted> clean_textures;
  /// Standard deviation of a slope of neutral silver about 1.
  double natural_slope_sd = 0.0;
  /// Silver scatters short waves more: channels' slopes stray by this part of what directed light
  /// may add to silver.
  double angle_slope_part = 0.0;
  /// Tints by whose faintest amount the detection limit is told.
  std::vector<PerChannel<double>> limit_signatures;
  /// Above this detection limit a scan is no evidence that film is clean, density.
  double useful_limit_density = 0.0;
  /// What is left of a tint's confidence in a camera's finished picture, share.
  double finished_picture_trust = 0.0;

  bool operator==(const TintKnowledge&) const = default;
};

}  // namespace fogline
