#include "process/belief/development_belief.h"

#include "process/belief/development_kinetics.h"
#include "process/belief/normal_grid.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace fogline {
namespace {

// Finer grids move the advised time by less than the 15 seconds to which it is rounded.
constexpr int contrast_slices = 21;
constexpr int rate_slices = 11;
constexpr int start_slices = 3;
constexpr int time_slices = 9;
constexpr int q10_slices = 5;

/// Share within which a film counts as having reached its limit: later, time tells nothing.
constexpr double least_grown_share = 1e-3;

constexpr double share_covered = 0.95;

/// What the habits give: the roll's contrast with the chance of one roll taken off. Of a roll that
/// lies off the aim, part is habit and comes again, part is chance and doesn't; the shares are
/// those of their variances.
LogNormal habit_contrast(const DevelopedRoll& roll, const DevelopmentPriors& priors) {
  const double habit = priors.habit_sd_share * priors.habit_sd_share;
  const double chance = priors.roll_scatter_share * priors.roll_scatter_share;
  const double lasting = habit / (habit + chance);
  const double off_aim = std::log(roll.contrast_index.value / roll.aim);
  const double sd = roll.contrast_index.u95 / coverage_factor_95 / roll.contrast_index.value;
  return {std::log(roll.aim) + lasting * off_aim,
          std::sqrt(lasting * lasting * sd * sd + lasting * chance)};
}

std::vector<double> slice_time(const DevelopedRoll& roll, const DevelopmentPriors& priors) {
  if (roll.time_min) {
    return {*roll.time_min};
  }
  std::vector<double> minutes;
  const LogNormal usual = log_normal(priors.time_min);
  for (const double deviation : normal_slices(time_slices)) {
    minutes.push_back(usual.at(deviation));
  }
  return minutes;
}

/// Factors from this roll's rate to the next one's.
std::vector<double> slice_rate_change(const DevelopedRoll& roll, const DevelopmentPriors& priors) {
  if (!roll.temperature_c || !roll.next_temperature_c) {
    return {1.0};
  }
  std::vector<double> factors;
  const LogNormal q10 = log_normal(priors.q10);
  for (const double deviation : normal_slices(q10_slices)) {
    factors.push_back(
        rate_factor(q10.at(deviation), *roll.temperature_c, *roll.next_temperature_c));
  }
  return factors;
}

/// All curves that grow, without their limit: equal weights, `contrast` and limit still open.
std::vector<DevelopmentCase> growing_curves(const DevelopedRoll& roll, const FilmKinetics& kinetics,
                                            const DevelopmentPriors& priors) {
  std::vector<DevelopmentCase> curves;
  const LogNormal rates = log_normal(kinetics.rate_per_min);
  const double usual_min = std::sqrt(priors.time_min.low * priors.time_min.high);
  const std::vector<double> rate_changes = slice_rate_change(roll, priors);
  for (const double time_min : slice_time(roll, priors)) {
    for (const double deviation : normal_slices(rate_slices)) {
      for (int i = 0; i < start_slices; ++i) {
        for (const double rate_change : rate_changes) {
          DevelopmentCase curve;
          curve.time_min = time_min;
          curve.rate_per_min = rates.at(deviation) * usual_min / time_min;
          curve.next_rate_per_min = curve.rate_per_min * rate_change;
          curve.start_min = priors.latest_start_min * (i + 0.5) / start_slices;
          curves.push_back(curve);
        }
      }
    }
  }
  return curves;
}

double grown_share(double rate_per_min, double start_min, double minutes) {
  return contrast_after({1.0, rate_per_min, start_min}, minutes);
}

/// Adds the curves through one contrast, weighed by how usual their limits are.
void add_cases(double contrast, const std::vector<DevelopmentCase>& curves, const LogNormal& limits,
               std::vector<DevelopmentCase>& cases) {
  const std::size_t first = cases.size();
  double total = 0.0;
  for (DevelopmentCase curve : curves) {
    const double grown = grown_share(curve.rate_per_min, curve.start_min, curve.time_min);
    if (grown < least_grown_share) {
      continue;
    }
    curve.contrast = contrast;
    curve.contrast_limit = contrast / grown;
    const double off = (std::log(curve.contrast_limit) - limits.mean) / limits.sd;
    curve.weight = std::exp(-0.5 * off * off);
    total += curve.weight;
    cases.push_back(curve);
  }
  for (std::size_t i = first; i < cases.size() && total > 0.0; ++i) {
    cases[i].weight /= total * contrast_slices;
  }
}

/// Half-width about `middle` that holds 95 in 100 of what `share_within` counts, by bisection below
/// `widest`.
template <typename ShareWithin>
double half_width_95(const ShareWithin& share_within, double widest) {
  // Halvings that bring any width below a millionth of the widest.
  constexpr int halvings = 20;
  double low = 0.0;
  double high = widest;
  for (int i = 0; i < halvings; ++i) {
    const double middle = 0.5 * (low + high);
    (share_within(middle) < share_covered ? low : high) = middle;
  }
  return high;
}

/// Chance that a roll about `contrast`, with a standard deviation of `sd`, lies within `reach` of
/// `middle`.
double chance_near(double contrast, double sd, double middle, double reach) {
  return normal_share_below((middle + reach - contrast) / sd) -
         normal_share_below((middle - reach - contrast) / sd);
}

}  // namespace

double DevelopmentCase::contrast_after_share(double time_share) const {
  return contrast_after({contrast_limit, next_rate_per_min, start_min}, time_share * time_min);
}

std::optional<double> DevelopmentCase::share_for_contrast(double contrast_wanted) const {
  const auto minutes =
      minutes_for_contrast({contrast_limit, next_rate_per_min, start_min}, contrast_wanted);
  return minutes ? std::optional(*minutes / time_min) : std::nullopt;
}

double DevelopmentBelief::chance_within(double aim, double tolerance, double time_share) const {
  double chance = 0.0;
  for (const DevelopmentCase& one : cases) {
    const double contrast = one.contrast_after_share(time_share);
    if (contrast > 0.0) {
      chance += one.weight * chance_near(contrast, roll_scatter_share * contrast, aim, tolerance);
    }
  }
  return chance;
}

double DevelopmentBelief::chance_of_help(double aim, double time_share) const {
  double chance = 0.0;
  for (const DevelopmentCase& one : cases) {
    if (std::abs(one.contrast_after_share(time_share) - aim) < std::abs(one.contrast - aim)) {
      chance += one.weight;
    }
  }
  return chance;
}

double DevelopmentBelief::chance_out_of_reach(double aim) const {
  double chance = 0.0;
  for (const DevelopmentCase& one : cases) {
    if (one.contrast_limit <= aim) {
      chance += one.weight;
    }
  }
  return chance;
}

Quantity DevelopmentBelief::contrast_of_next(double time_share) const {
  Quantity next;
  for (const DevelopmentCase& one : cases) {
    next.value += one.weight * one.contrast_after_share(time_share);
  }
  const auto share_within = [&](double reach) {
    double share = 0.0;
    for (const DevelopmentCase& one : cases) {
      const double contrast = one.contrast_after_share(time_share);
      if (contrast > 0.0) {
        share +=
            one.weight * chance_near(contrast, roll_scatter_share * contrast, next.value, reach);
      }
    }
    return share;
  };
  constexpr double widest = 2.0;
  next.u95 = half_width_95(share_within, widest);
  return next;
}

std::optional<double> DevelopmentBelief::share_u95(double aim, double time_share) const {
  std::vector<std::pair<double, double>> off_and_weight;
  double reached = 0.0;
  for (const DevelopmentCase& one : cases) {
    if (const auto share = one.share_for_contrast(aim)) {
      off_and_weight.emplace_back(std::abs(*share - time_share), one.weight);
      reached += one.weight;
    }
  }
  if (reached < share_covered) {
    return std::nullopt;
  }
  std::sort(off_and_weight.begin(), off_and_weight.end());
  double counted = 0.0;
  for (const auto& [off, weight] : off_and_weight) {
    counted += weight;
    if (counted >= share_covered) {
      return off;
    }
  }
  return std::nullopt;
}

DevelopmentBelief believe_development(const DevelopedRoll& roll, const FilmKinetics& kinetics,
                                      const DevelopmentPriors& priors) {
  DevelopmentBelief belief;
  belief.roll_scatter_share = priors.roll_scatter_share;
  const std::vector<DevelopmentCase> curves = growing_curves(roll, kinetics, priors);
  const LogNormal habit = habit_contrast(roll, priors);
  const LogNormal limits = log_normal(kinetics.contrast_limit);
  for (const double deviation : normal_slices(contrast_slices)) {
    add_cases(habit.at(deviation), curves, limits, belief.cases);
  }
  return belief;
}

}  // namespace fogline
