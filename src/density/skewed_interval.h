#pragma once

namespace fogline {

/// An interval of densities that holds 95 of 100.
struct DensityInterval {
  double lower95 = 0.0;
  double upper95 = 0.0;
};

/// Deeper film isn't made: intervals end here.
inline constexpr double deepest_density = 5.0;

/// Densities D = -log10(T + a) + b, where T is the transmittance of `density` and a and b are
/// normal errors with the standard uncertainties given, of transmittance and of density: the
/// probabilistically symmetric interval (JCGM 101:2008 clauses 5 and 7.7). Near the limit of a
/// scanner the logarithm isn't straight over a, and the interval reaches further up than down. The
/// distribution of a is laid out on equally likely values instead of random ones, that of b is
/// added exactly.
DensityInterval skewed_interval(double density, double standard_transmittance,
                                double standard_density);

}  // namespace fogline
