#pragma once

#include "process/process_priors.h"

#include <vector>

namespace fogline {

/// Share of a normal distribution below `deviation` standard deviations.
double normal_share_below(double deviation);

/// The medians of `count` equal slices of a normal distribution, in standard deviations about its
/// mean, widened so that their own standard deviation is 1: equal weights then stand for it.
std::vector<double> normal_slices(int count);

/// A log-normal quantity: mean and standard deviation of its natural logarithm.
struct LogNormal {
  double mean = 0.0;
  double sd = 0.0;

  [[nodiscard]] double at(double deviation) const;
};

/// The log-normal distribution of which 95 in 100 lie in `range`.
LogNormal log_normal(const PriorRange& range);

}  // namespace fogline
