#include "tint/amount_distribution.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

constexpr double least = 0.01;
constexpr double most = 1.3;

}  // namespace

int AmountDistribution::step_of(double amount) {
  const double share = std::log(std::max(amount, least) / least) / std::log(most / least);
  return std::clamp(static_cast<int>(share * steps), 0, steps - 1);
}

void AmountDistribution::add(double amount, double weight) {
  weights_[static_cast<std::size_t>(step_of(amount))] += weight;
  total_ += weight;
}

void AmountDistribution::scale(double factor) {
  for (double& weight : weights_) {
    weight *= factor;
  }
  total_ *= factor;
}

double AmountDistribution::below(double amount) const {
  double sum = 0.0;
  for (int i = 0; i <= step_of(amount); ++i) {
    sum += weights_[static_cast<std::size_t>(i)];
  }
  return sum;
}

double AmountDistribution::quantile(double share) const {
  double sum = 0.0;
  for (int i = 0; i < steps; ++i) {
    const double weight = weights_[static_cast<std::size_t>(i)];
    if (weight > 0.0 && sum + weight >= share * total_) {
      const double part = (share * total_ - sum) / weight;
      return least * std::pow(most / least, (i + part) / steps);
    }
    sum += weight;
  }
  return most;
}

}  // namespace fogline
