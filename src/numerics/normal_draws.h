#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace fogline {

/// Independent standard normal numbers, the same for a seed on every machine: SplitMix64 (Steele,
/// Lea & Flood 2014) turned normal by Box & Muller's method (1958).
class SeededNormals {
 public:
  explicit SeededNormals(std::uint64_t seed) : state_(seed) {}

  [[nodiscard]] double next();
  [[nodiscard]] std::vector<double> next(std::size_t count);

 private:
  /// Evenly within 0 and 1, ends left out.
  double even();

  std::uint64_t state_;
  double kept_ = 0.0;
  bool keeps_ = false;
};

/// Draws from a normal distribution of several variables (JCGM 102, 6.4.8).
class NormalDraws {
 public:
  /// `covariance` row by row, positive definite.
  NormalDraws(std::vector<double> mean, std::span<const double> covariance);

  [[nodiscard]] std::vector<double> draw(SeededNormals& random) const;

 private:
  std::vector<double> mean_;
  /// Lower triangle whose square is the covariance, row by row.
  std::vector<double> root_;
};

}  // namespace fogline
