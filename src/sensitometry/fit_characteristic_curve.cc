#include "sensitometry/shape_fit.h"

#include <fogline/numerics/normal_draws.h>
#include <fogline/numerics/robust.h>
#include <fogline/sensitometry/characteristic_curve.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace fogline {

namespace {

/// The warp's sizes and lengths in log H that are weighed, and how far doubts are believed with the
/// probability of each beforehand.
constexpr std::array warp_sizes{0.004, 0.015, 0.04, 0.1};
constexpr std::array warp_lengths{0.3, 0.8};
struct Belief {
  double factor;
  double probability;
};
constexpr std::array beliefs{Belief{1.0, 0.85}, Belief{1.6, 0.13}, Belief{2.6, 0.02}};
/// Assumptions less probable than this part of the best change nothing.
constexpr double negligible = 1e-3;
/// A curve is drawn so far beyond the exposures, in log H.
constexpr double beyond = 1.5;
constexpr double node_distance = 0.1;
constexpr std::size_t draw_count = 400;
/// A step so many standard deviations off the others' curve is no step of it.
constexpr double wild = 4.5;
constexpr std::size_t steps_a_wild_one = 5;
/// Base plus fog where nobody read it (common practice, no source).
constexpr double usual_base = 0.25;
constexpr double usual_base_doubt = 0.15;
/// No base is known better against the steps than this, density.
constexpr double least_base_doubt = 5e-4;
constexpr double least_density_doubt = 5e-4;

struct Weighed {
  ShapeAssumption assumption;
  ShapeFit fit;
  double weight = 0.0;
};

struct Ground {
  std::vector<ExposedStep> steps;
  double base = usual_base;
  double base_doubt = usual_base_doubt;
  std::vector<double> nodes;
};

Ground ground_of(const ExposedSteps& exposed, const std::vector<ExposedStep>& used) {
  Ground ground;
  ground.steps = used;
  if (exposed.base_fog) {
    ground.base = *exposed.base_fog;
    ground.base_doubt = std::max(least_base_doubt, exposed.base_fog_doubt);
  }
  for (ExposedStep& step : ground.steps) {
    step.density_doubt = std::max(least_density_doubt, step.density_doubt);
  }
  const double begin = used.front().log_h - beyond;
  const int count = static_cast<int>((used.back().log_h + beyond - begin) / node_distance) + 2;
  for (int i = 0; i < count; ++i) {
    ground.nodes.push_back(begin + node_distance * i);
  }
  return ground;
}

ShapeProblem problem_of(const Ground& ground, const ShapeAssumption& assumption) {
  return {ground.steps, ground.base, ground.base_doubt, assumption, ground.nodes};
}

/// The curve of a shape and a warp at the nodes.
CurveTable table_of(const CurveShape& shape, const std::vector<double>& nodes,
                    const std::vector<double>& warp) {
  CurveTable table;
  table.begin_log_h = nodes.front();
  const int parts = static_cast<int>(std::lround(node_distance / table.step_log_h));
  double warped = -INFINITY;
  for (std::size_t i = 0; i + 1 < nodes.size(); ++i) {
    for (int part = 0; part < parts; ++part) {
      const double share = static_cast<double>(part) / parts;
      const double log_h = nodes[i] + share * node_distance;
      // Where the warp would turn the curve back, it stands still.
      warped = std::max(warped, log_h + warp[i] + share * (warp[i + 1] - warp[i]));
      table.net_density.push_back(shaped_density(shape, warped).density);
    }
  }
  return table;
}

void weigh(std::vector<Weighed>& all) {
  double best = -INFINITY;
  for (const Weighed& one : all) {
    best = std::max(best, one.weight);
  }
  double sum = 0.0;
  for (Weighed& one : all) {
    one.weight = std::exp(one.weight - best);
    sum += one.weight;
  }
  for (Weighed& one : all) {
    one.weight /= sum;
  }
  std::erase_if(all, [](const Weighed& one) { return one.weight < negligible; });
}

std::vector<Weighed> fit_all(const Ground& ground) {
  std::vector<Weighed> all;
  for (const BendFamily family : bend_families) {
    std::vector<double> start;
    for (const double length : warp_lengths) {
      for (const double size : warp_sizes) {
        for (const Belief& belief : beliefs) {
          const ShapeAssumption assumption{family, {size, length}, belief.factor};
          ShapeFit fit = problem_of(ground, assumption).fitted(start);
          if (fit.solved) {
            start = fit.unknowns;
            const double weight = fit.log_evidence + std::log(belief.probability);
            all.push_back({assumption, std::move(fit), weight});
          }
        }
      }
    }
  }
  weigh(all);
  return all;
}

/// The step that least belongs to the others' curve, if any is wild.
std::optional<std::size_t> wild_step(const Ground& ground) {
  constexpr ShapeAssumption middling{BendFamily::logistic, {0.04, 0.8}, 1.0};
  const ShapeFit fit = problem_of(ground, middling).fitted({});
  if (!fit.solved) {
    return std::nullopt;
  }
  std::vector<double> sizes;
  for (const double residual : fit.left_out_residuals) {
    sizes.push_back(std::abs(residual));
  }
  // Doubts that are too small for all steps don't make one wild.
  constexpr double median_to_deviation = 1.4826;
  const double scale = std::max(1.0, median_to_deviation * median(sizes));
  const auto worst = std::max_element(sizes.begin(), sizes.end());
  return *worst > wild * scale ? std::optional(static_cast<std::size_t>(worst - sizes.begin()))
                               : std::nullopt;
}

/// Leaves wild steps out, one after another.
std::vector<ExposedStep> tame(const ExposedSteps& exposed, std::vector<ExposedStep>& steps) {
  const std::size_t most = steps.size() / steps_a_wild_one;
  for (std::size_t left = 0;; ++left) {
    std::vector<ExposedStep> used;
    std::vector<std::size_t> place;
    for (std::size_t i = 0; i < steps.size(); ++i) {
      if (steps[i].left_out.empty()) {
        used.push_back(steps[i]);
        place.push_back(i);
      }
    }
    if (left >= most || used.size() <= fewest_exposed_steps) {
      return used;
    }
    const auto worst = wild_step(ground_of(exposed, used));
    if (!worst) {
      return used;
    }
    steps[place[*worst]].left_out = "It doesn't fit the other steps.";
  }
}

void draw_curves(CharacteristicCurve& curve, const std::vector<Weighed>& all, const Ground& ground,
                 const ExposedSteps& exposed, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  std::vector<double> bases;
  double owed = 0.0;
  for (const Weighed& one : all) {
    owed += one.weight * static_cast<double>(draw_count);
    const ShapeProblem problem = problem_of(ground, one.assumption);
    const NormalDraws draws(one.fit.unknowns, one.fit.covariance);
    while (static_cast<double>(curve.draws.size()) + 0.5 < owed) {
      const std::vector<double> unknowns = draws.draw(random);
      CurveTable table =
          table_of(problem.shape_of(unknowns), ground.nodes,
                   problem.drawn_warp(unknowns, standard_normals(ground.nodes.size(), random)));
      const std::vector<double> common = standard_normals(2, random);
      const double density_scale = std::exp(exposed.density_share_doubt * common[0]);
      for (double& density : table.net_density) {
        density *= density_scale;
      }
      // The log H scale stretches about the middle exposure.
      const double log_h_scale = std::exp(exposed.log_h_share_doubt * common[1]);
      const double middle = 0.5 * (curve.begin_log_h + curve.end_log_h);
      table.begin_log_h = middle + (table.begin_log_h - middle) * log_h_scale;
      table.step_log_h *= log_h_scale;
      curve.draws.push_back(std::move(table));
      bases.push_back(problem.base_of(unknowns));
    }
  }
  const double count = static_cast<double>(bases.size());
  curve.base_fog = std::accumulate(bases.begin(), bases.end(), 0.0) / count;
  double squares = 0.0;
  for (const double base : bases) {
    squares += (base - curve.base_fog) * (base - curve.base_fog);
  }
  curve.base_fog_doubt = std::sqrt(squares / count);
}

/// The mean over the assumptions, without the draws' own scatter.
void tell_mean(CharacteristicCurve& curve, const std::vector<Weighed>& all, const Ground& ground) {
  for (const Weighed& one : all) {
    const ShapeProblem problem = problem_of(ground, one.assumption);
    const CurveTable table = table_of(problem.shape_of(one.fit.unknowns), ground.nodes,
                                      problem.warp_of(one.fit.unknowns));
    if (curve.mean.net_density.empty()) {
      curve.mean = table;
      std::fill(curve.mean.net_density.begin(), curve.mean.net_density.end(), 0.0);
    }
    for (std::size_t i = 0; i < table.net_density.size(); ++i) {
      curve.mean.net_density[i] += one.weight * table.net_density[i];
    }
  }
  double total = 0.0;
  for (const Weighed& one : all) {
    total += one.weight;
  }
  for (double& density : curve.mean.net_density) {
    density /= total;
  }
  for (std::size_t i = 0; i < curve.mean.net_density.size(); ++i) {
    const double log_h = curve.mean.begin_log_h + curve.mean.step_log_h * static_cast<double>(i);
    double squares = 0.0;
    for (const CurveTable& draw : curve.draws) {
      const double off = draw.density_at(log_h) - curve.mean.net_density[i];
      squares += off * off;
    }
    curve.doubt.push_back(std::sqrt(squares / static_cast<double>(curve.draws.size())));
  }
}

void tell_families(CharacteristicCurve& curve, const std::vector<Weighed>& all) {
  for (const Weighed& one : all) {
    curve.family_probability[static_cast<std::size_t>(one.assumption.family)] += one.weight;
  }
  const auto best =
      std::max_element(curve.family_probability.begin(), curve.family_probability.end());
  curve.family = bend_families[static_cast<std::size_t>(best - curve.family_probability.begin())];
}

}  // namespace

CurveOutcome fit_characteristic_curve(const ExposedSteps& exposed, std::uint64_t seed) {
  CurveOutcome outcome;
  CharacteristicCurve& curve = outcome.curve;
  curve.steps = exposed.steps;
  std::stable_sort(curve.steps.begin(), curve.steps.end(),
                   [](const ExposedStep& a, const ExposedStep& b) { return a.log_h < b.log_h; });
  const auto usable = std::count_if(curve.steps.begin(), curve.steps.end(),
                                    [](const ExposedStep& step) { return step.left_out.empty(); });
  if (usable < fewest_exposed_steps) {
    outcome.failure = "only " + std::to_string(usable) +
                      " exposed steps can be used and a curve needs " +
                      std::to_string(fewest_exposed_steps);
    return outcome;
  }
  const std::vector<ExposedStep> used = tame(exposed, curve.steps);
  curve.begin_log_h = used.front().log_h;
  curve.end_log_h = used.back().log_h;
  const Ground ground = ground_of(exposed, used);
  const std::vector<Weighed> all = fit_all(ground);
  if (all.empty()) {
    outcome.failure = "no curve passes the exposed steps; their densities don't rise with exposure";
    return outcome;
  }
  draw_curves(curve, all, ground, exposed, seed);
  tell_mean(curve, all, ground);
  tell_families(curve, all);
  double squares = 0.0;
  for (const ExposedStep& step : used) {
    const double off = step.density - curve.base_fog - curve.mean.density_at(step.log_h);
    squares += off * off;
  }
  curve.residual_rms = std::sqrt(squares / static_cast<double>(used.size()));
  return outcome;
}

}  // namespace fogline
