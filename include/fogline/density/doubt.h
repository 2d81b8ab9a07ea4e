#pragma once

#include <fogline/base/quantity.h>

namespace fogline {

/// What makes densities of one strip doubtful, as standard uncertainties unless said otherwise.
/// Filled by what the scan shows and by what is known of its kind.
struct DoubtSources {
  /// Zero: scatter of bare light, and the lamp's bulge between where it was read, density.
  double zero_density = 0.0;
  /// Clipped bare light may have been brighter than the top code: greatest shift, density, one way
  /// (densities read too low).
  double clipped_shift_density = 0.0;
  /// Stray light left, as a share of the bare light.
  double stray_transmittance = 0.0;
  /// Scale of the tone curve: share of the density.
  double transfer_share = 0.0;
  /// A camera's display curve flattens near the top code: densities just below the lamp may read
  /// this many times too low (1: doesn't), fading with density.
  double highlight_compression = 1.0;
  /// Angle of light: directed light reads silver up to this share too high (half width of the
  /// interval that covers 95 in 100 devices of the kind).
  double angle_share_95 = 0.0;
};

/// Expanded uncertainty (95 %) of a density `density` above zero of which `net` is silver. Sources
/// are independent and add in squares (JCGM 100 clause 5.1.2), the angle of light as its own 95 %
/// half width.
double u95_of_density(const DoubtSources& sources, double density, double net);

/// The same for a difference of two densities of one frame: what both share (zero, clipping)
/// cancels.
double u95_of_range(const DoubtSources& sources, double low, double high);

/// The quantity with its interval: skewed upward where clipping or a compressed tone curve can only
/// have made the density read low.
Quantity quantity_of_density(const DoubtSources& sources, double density, double net);

/// Highest density at which stray light leaves a doubt of 0.1 (95 %).
double density_limit(const DoubtSources& sources);

/// Highest density that is told as a number at all: beyond it stray light's doubt (95 %) is 0.45,
/// about the light itself, and only a lower bound can be given.
double density_reach(const DoubtSources& sources);

}  // namespace fogline
