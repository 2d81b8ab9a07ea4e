// Logistic regression: weights of the log odds that something is what it looks like.
#pragma once

#include <vector>

namespace training {

/// What was seen of one thing, and whether it is right.
struct Example {
  std::vector<double> signs;
  bool right = false;
};

struct LogisticFit {
  double constant = 0.0;
  /// One a sign.
  std::vector<double> weights;

  [[nodiscard]] double log_odds(const std::vector<double>& signs) const;
};

/// Greatest likelihood by Newton's steps (iteratively reweighted least squares), each weight held
/// near 0 by a normal prior of ten standard deviations of its sign: examples that can be parted
/// without fail would else have no greatest one. `examples` must not be empty and must all have the
/// same number of signs.
LogisticFit fit_logistic(const std::vector<Example>& examples);

}  // namespace training
