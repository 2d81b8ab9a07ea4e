// Random numbers for tests: the same seed gives the same numbers on every machine, which the
// distributions of the standard library don't promise.
#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>

namespace fogline {

class SeededNoise {
 public:
  explicit SeededNoise(std::uint32_t seed) : engine_(seed) {}

  /// In (0, 1).
  double uniform() { return (static_cast<double>(engine_()) + 0.5) / 4294967296.0; }
  double uniform(double low, double high) { return low + (high - low) * uniform(); }
  /// Box-Muller.
  double normal(double sd) {
    const double radius = std::sqrt(-2.0 * std::log(uniform()));
    return sd * radius * std::cos(2.0 * std::numbers::pi * uniform());
  }

 private:
  std::mt19937 engine_;
};

}  // namespace fogline
