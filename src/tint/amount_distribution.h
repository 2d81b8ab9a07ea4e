#pragma once

#include <array>

namespace fogline {

/// Probability over amounts from 0.01 to 1.3, gathered in narrow steps of their logarithm.
class AmountDistribution {
 public:
  void add(double amount, double weight);
  void scale(double factor);
  [[nodiscard]] double total() const { return total_; }
  /// Weight at or below `amount`.
  [[nodiscard]] double below(double amount) const;
  /// Amount with `share` of the weight below it. `total()` must not be 0.
  [[nodiscard]] double quantile(double share) const;

 private:
  /// A step is 1.2 % of the amount: finer than any scan tells it.
  static constexpr int steps = 400;
  static int step_of(double amount);

  std::array<double, steps> weights_{};
  double total_ = 0.0;
};

}  // namespace fogline
