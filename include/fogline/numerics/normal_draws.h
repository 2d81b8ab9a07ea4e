#pragma once

#include <random>
#include <span>
#include <vector>

namespace fogline {

/// Independent standard normal numbers.
std::vector<double> standard_normals(std::size_t count, std::mt19937_64& random);

/// Draws from a normal distribution of several variables (JCGM 102, 6.4.8).
class NormalDraws {
 public:
  /// `covariance` row by row, positive definite.
  NormalDraws(std::vector<double> mean, std::span<const double> covariance);

  [[nodiscard]] std::vector<double> draw(std::mt19937_64& random) const;

 private:
  std::vector<double> mean_;
  /// Lower triangle whose square is the covariance, row by row.
  std::vector<double> root_;
};

}  // namespace fogline
