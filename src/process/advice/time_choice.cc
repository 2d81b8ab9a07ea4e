#include "process/advice/time_choice.h"

#include <algorithm>
#include <cmath>

namespace fogline {
namespace {

constexpr double fine_step_s = 15.0;
constexpr double coarse_step_s = 30.0;
constexpr double coarse_from_s = 600.0;
constexpr double share_step = 0.05;
/// Beyond these one roll's curve is a guess.
constexpr double least_share = 0.5;
constexpr double greatest_share = 2.0;

}  // namespace

double settable_time_s(double seconds) {
  const double step = seconds < coarse_from_s ? fine_step_s : coarse_step_s;
  return step * std::round(seconds / step);
}

std::vector<double> settable_shares(std::optional<double> time_s, double centre) {
  std::vector<double> shares;
  if (!time_s) {
    const int count = static_cast<int>(std::lround((greatest_share - least_share) / share_step));
    for (int i = 0; i <= count; ++i) {
      shares.push_back(centre * (least_share + i * share_step));
    }
    return shares;
  }
  const double longest_s = greatest_share * centre * *time_s;
  double at_s = std::max(fine_step_s, settable_time_s(least_share * centre * *time_s));
  while (at_s <= longest_s) {
    shares.push_back(at_s / *time_s);
    at_s += at_s < coarse_from_s ? fine_step_s : coarse_step_s;
  }
  return shares;
}

double best_share(const DevelopmentBelief& belief, const Aim& aim,
                  const std::vector<double>& shares) {
  double best = 1.0;
  double greatest_chance = -1.0;
  for (const double share : shares) {
    const double chance = belief.chance_within(aim.contrast_index, aim.tolerance, share);
    if (chance > greatest_chance) {
      greatest_chance = chance;
      best = share;
    }
  }
  return best;
}

}  // namespace fogline
