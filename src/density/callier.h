#pragma once

#include <vector>

namespace fogline {

/// Fog in clear film is silver, about this much (common practice, no source): the part that the
/// angle of light touches.
inline constexpr double usual_fog = 0.05;

/// Part of Callier's factor that silver of a net density has reached: it rises as
/// 1 - exp(-D / 0.3), nearly constant beyond (common practice, no source).
double callier_risen(double net_density);

/// Silver scatters, so directed light reads it denser than diffuse light does (Callier 1909): a net
/// diffuse density D by D (1 + (Q - 1) r(D)), where Q >= 1 is the scanner's factor and r the part
/// that it has reached. Odd below 0. Q = 1: diffuse light, or what isn't silver.
double directed_density(double diffuse, double callier);

/// The other way round, within 1e-9 of density.
double diffuse_density(double directed, double callier);

/// How fast the directed density rises with the diffuse one: what a doubt of the first is divided
/// by to become one of the second.
double directed_slope(double diffuse, double callier);

/// `diffuse_density` by a table, for whole pictures; within 3e-5 of it, NaN and infinite densities
/// stay what they are.
class DiffuseScale {
 public:
  explicit DiffuseScale(double callier);
  [[nodiscard]] double of_directed(double directed) const;

 private:
  double callier_;
  std::vector<double> diffuse_;
};

}  // namespace fogline
