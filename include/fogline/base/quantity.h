#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <optional>

namespace fogline {

/// A measured value with its expanded uncertainty in the sense of the Guide to the Expression of
/// Uncertainty in Measurement (JCGM 100): the interval value - u95 ... value + u95 covers the true
/// value 95 times in 100.
struct Quantity {
  double value = 0.0;
  double u95 = 0.0;
  /// The part of u95 that all rolls of this scanner and calibration share.
  std::optional<double> u95_common;
  /// Ends of the interval where it is one-sided or skew.
  std::optional<double> lower95;
  std::optional<double> upper95;
  /// The scan only tells a lower bound: the film is denser than the scan can see.
  bool at_least = false;

  friend bool operator==(const Quantity&, const Quantity&) = default;
};

/// Two-sided 95 % coverage factor of a normal distribution (JCGM 100 G.1.3).
inline constexpr double coverage_factor_95 = 1.96;

/// Up to three colour channels, in the order red, green, blue. A grey scan has one channel, and
/// every per-channel value of it stands at index 0.
inline constexpr int most_channels = 3;

/// One value a channel.
template <typename T>
using PerChannel = std::array<T, most_channels>;

/// Weights of red, green and blue *transmittance* in visual transmittance. The luminance row of
/// IEC 61966-2-1 (sRGB); for neutral silver visual density then equals ISO 5-3 visual density,
/// for dyes it only comes near it.
inline constexpr PerChannel<double> visual_weights{0.2126, 0.7152, 0.0722};

/// Visual transmittance (or light) from per-channel values; `channels` is 1 or 3.
template <typename T>
T visual_from_channels(const PerChannel<T>& value, int channels) {
  if (channels == 1) {
    return value[0];
  }
  T sum{};
  for (std::size_t c = 0; c < value.size(); ++c) {
    sum += static_cast<T>(visual_weights[c]) * value[c];
  }
  return sum;
}

/// Optical density of a transmittance: D = -log10 T (ISO 5-1). T in (0, 1]; T > 1 gives a negative
/// density (brighter than the bare light path: noise or a tilted lamp), T <= 0 gives infinity.
inline double density_from_transmittance(double transmittance) {
  return transmittance > 0.0 ? -std::log10(transmittance) : INFINITY;
}

/// Transmittance of an optical density: T = 10^-D.
inline double transmittance_from_density(double density) {
  return std::pow(10.0, -density);
}

}  // namespace fogline
