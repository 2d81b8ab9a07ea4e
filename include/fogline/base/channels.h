#pragma once

#include <array>
#include <cmath>
#include <cstddef>

namespace fogline {

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
