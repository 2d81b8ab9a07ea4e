#include "simulator/foreign_curves.h"

#include <cmath>
#include <numbers>

namespace filmsim {
namespace {

double s_shape(double z, double height) {
  return height / (1.0 + std::exp(-4.0 * z / height));
}

}  // namespace

double two_layers(double z, double maximum_density) {
  constexpr double kFastShare = 0.4;
  constexpr double kSlowStartsAt = 0.75;  // share of the maximum density by which it lies behind
  return s_shape(z, kFastShare * maximum_density) +
         s_shape(z - kSlowStartsAt * maximum_density, (1.0 - kFastShare) * maximum_density);
}

double swept_toe(double z, double maximum_density) {
  constexpr double kPower = 2.2;
  if (z <= 0.0) return 0.0;
  return maximum_density * (1.0 - std::exp(-std::pow(z / maximum_density, kPower)));
}

double short_toe(double z, double maximum_density) {
  return maximum_density * std::exp(-std::exp(-std::numbers::e * z / maximum_density));
}

double wavy_line(double z, double maximum_density) {
  constexpr double kWaveLength = 1.1;
  constexpr double kWaveHeight = 0.07;  // times 2 pi / length stays below 1: it never falls
  const double wave = kWaveHeight * std::sin(2.0 * std::numbers::pi * z / kWaveLength);
  return s_shape(z + wave, maximum_density);
}

}  // namespace filmsim
