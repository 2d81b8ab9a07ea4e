#pragma once

#include "density/density_strip.h"
#include "tint/tint_knowledge.h"

#include <fogline/base/quantity.h>
#include <fogline/tint/tint.h>

#include <optional>
#include <vector>

namespace fogline {

/// What one strip shows of its colour.
struct TintSigns {
  /// Clear film above the bare light, a channel each.
  PerChannel<double> clear{};
  /// Standard uncertainty of a difference between two channels of `clear` (scatter of the patches
  /// read, per channel: grain and dirt don't move the channels together).
  double channel_scatter = 0.0;
  /// Texture: standard deviation of (blue - red) density between spots of clear film about 2 mm
  /// apart, grain's share taken off.
  double texture = 0.0;
  /// Standard deviation that noise alone leaves between such spots.
  double texture_noise = 0.0;
  /// Spots that texture was read from; below three it tells nothing.
  int texture_spots = 0;
  /// Slope of a channel's density against red over the pictures: 1 for neutral silver. Absent where
  /// the pictures hold too little density to tell.
  std::optional<PerChannel<double>> slope;
  /// Standard uncertainty of the slopes: scatter about them.
  double slope_doubt = 0.0;
  /// Range of red density that the slopes were read over, above the bare light.
  double slope_low = 0.0;
  double slope_high = 0.0;
  /// Clear film read, mm2.
  double area_mm2 = 0.0;
};

/// What limits the judgement, beside the strip itself.
struct TintLimits {
  /// Standard uncertainty of a channel's zero against another's: lamp, clipping, tone curve.
  double zero_doubt = 0.0;
  /// Scale of the tone curve, share of density: it moves channels of unequal density apart.
  double curve_share = 0.0;
  /// Stray light left that the channels don't share, as a share of the bare light: it bends the
  /// slopes at the dense end.
  double coloured_stray = 0.0;
  /// Directed light reads silver up to this share too dense (95 of 100), and a stain's share of it
  /// too small.
  double angle_share_95 = 0.0;
  /// Density per channel of the stock's clean base, from the roll card; absent: unknown.
  std::optional<PerChannel<double>> base_tint;
};

/// A tint is told from this probability on: where it is likelier than not, with the probability
/// said.
inline constexpr double told_probability = 0.5;

/// Reads the signs of one strip in colour. `clear` are the patches that counted as clear film,
/// `pictures` the frames' inner areas. Nothing where no clear film is in sight or the strip is
/// grey.
std::optional<TintSigns> read_tint_signs(const DensityStrip& density,
                                         const std::vector<FilmExtent>& clear,
                                         const std::vector<FilmExtent>& pictures);

/// Judges the colour of a scan from the signs of its strips (one roll: they share their stock).
/// Empty `strips`: unknown.
///
/// Method: Bayesian comparison of a clean base, each kind of veil and the pairs met together, over
/// populations of signatures and amounts; image-wise stain is judged by the slopes alone. Only
/// differences between channels count: a neutral rise is silver. `none` has as confidence the
/// probability that no tint stronger than the detection limit is there.
Tint judge_tint(const std::vector<TintSigns>& strips, const TintLimits& limits,
                const TintKnowledge& knowledge);

}  // namespace fogline
