#include "numerics/normal_draws.h"
#include "numerics/robust.h"
#include "sensitometry/weighed_shapes.h"

#include <fogline/sensitometry/characteristic_curve.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace fogline {

namespace {

constexpr std::size_t draw_count = 400;
/// A step so many standard deviations off the others' curve is no step of it.
constexpr double wild = 4.5;
constexpr std::size_t steps_a_wild_one = 5;

/// The step that least belongs to the others' curve, if any is wild.
std::optional<std::size_t> wild_step(const CurveGround& ground) {
  constexpr ShapeAssumption middling{ShapeFamily::logistic, {0.04, 0.8}, 1.0};
  const ShapeFit fit = ground.problem(middling).fitted({});
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
      if (!steps[i].left_out) {
        used.push_back(steps[i]);
        place.push_back(i);
      }
    }
    if (left >= most || used.size() <= fewest_exposed_steps) {
      return used;
    }
    const auto worst = wild_step(curve_ground(exposed, used));
    if (!worst) {
      return used;
    }
    steps[place[*worst]].left_out = fact_of(Unknown::step_off_curve);
  }
}

/// Draws of one fit: densities stray straight with the unknowns, as these are told so far that
/// they don't; a curve that a draw would turn back stands still there.
class FitDraws {
 public:
  FitDraws(const CurveGround& ground, const WeighedShape& one)
      : problem_(ground.problem(one.assumption)),
        unknowns_(one.fit.unknowns),
        off_(std::vector<double>(one.fit.unknowns.size(), 0.0), one.fit.covariance) {
    best_.begin_log_h = ground.nodes.front();
    places_a_node_ = static_cast<int>(std::lround(node_distance / best_.step_log_h));
    sampled_ = problem_.sampled(unknowns_, places_a_node_);
    best_.net_density = sampled_.density;
  }

  [[nodiscard]] const CurveTable& best() const { return best_; }

  struct Draw {
    CurveTable table;
    double base = 0.0;
  };
  [[nodiscard]] Draw draw(SeededNormals& random) const {
    std::vector<double> off = off_.draw(random);
    const std::vector<double> rest = problem_.drawn_rest_of_warp(random);
    Draw drawn{best_, 0.0};
    double least = 0.0;
    for (std::size_t i = 0; i < drawn.table.net_density.size(); ++i) {
      double& density = drawn.table.net_density[i];
      density = std::inner_product(
          off.begin(), off.end(),
          sampled_.by_unknown.begin() + static_cast<std::ptrdiff_t>(i * off.size()), density);
      const auto a_node = static_cast<std::size_t>(places_a_node_);
      const std::size_t node = i / a_node;
      const double share = static_cast<double>(i % a_node) / places_a_node_;
      density += sampled_.by_log_h[i] * (rest[node] + share * (rest[node + 1] - rest[node]));
      least = std::max(least, density);
      density = least;
    }
    for (std::size_t k = 0; k < off.size(); ++k) {
      off[k] += unknowns_[k];
    }
    drawn.base = problem_.base_of(off);
    return drawn;
  }

 private:
  ShapeProblem problem_;
  std::vector<double> unknowns_;
  NormalDraws off_;
  SampledCurve sampled_;
  CurveTable best_;
  int places_a_node_ = 1;
};

/// What all steps share: every density and every difference of log H is off by one part.
void share_doubts(CurveTable& table, const ExposedSteps& exposed, double middle_log_h,
                  SeededNormals& random) {
  const std::vector<double> common = random.next(2 + exposed.common_doubts.size());
  const double density_scale = std::exp(exposed.density_share_doubt * common[0]);
  double least = 0.0;
  for (double& density : table.net_density) {
    double off = 0.0;
    for (std::size_t k = 0; k < exposed.common_doubts.size(); ++k) {
      off += common[2 + k] * exposed.common_doubts[k].at(density);
    }
    least = std::max(least, density * density_scale + off);
    density = least;
  }
  const double log_h_scale = std::exp(exposed.log_h_share_doubt * common[1]);
  table.begin_log_h = middle_log_h + (table.begin_log_h - middle_log_h) * log_h_scale;
  table.step_log_h *= log_h_scale;
}

/// The mean over the assumptions, and curves drawn of each by its weight.
void tell_curves(FittedCurve& curve, const std::vector<WeighedShape>& all,
                 const CurveGround& ground, const ExposedSteps& exposed, std::uint64_t seed) {
  SeededNormals random(seed);
  const double middle_log_h = 0.5 * (curve.begin_log_h + curve.end_log_h);
  std::vector<double> bases;
  double owed = 0.0;
  for (const WeighedShape& one : all) {
    const FitDraws fit(ground, one);
    if (curve.mean.net_density.empty()) {
      curve.mean = fit.best();
      std::fill(curve.mean.net_density.begin(), curve.mean.net_density.end(), 0.0);
    }
    for (std::size_t i = 0; i < curve.mean.net_density.size(); ++i) {
      curve.mean.net_density[i] += one.weight * fit.best().net_density[i];
    }
    owed += one.weight * static_cast<double>(draw_count);
    while (static_cast<double>(curve.draws.size()) + 0.5 < owed) {
      FitDraws::Draw drawn = fit.draw(random);
      share_doubts(drawn.table, exposed, middle_log_h, random);
      curve.draws.push_back(std::move(drawn.table));
      bases.push_back(drawn.base);
    }
    curve.family_probability[static_cast<std::size_t>(one.assumption.family)] += one.weight;
  }
  // A warp may turn a curve back by a hair where no step says otherwise.
  double least = 0.0;
  for (double& density : curve.mean.net_density) {
    least = std::max(least, density);
    density = least;
  }
  const auto count = static_cast<double>(bases.size());
  curve.base_fog = std::accumulate(bases.begin(), bases.end(), 0.0) / count;
  double squares = 0.0;
  for (const double base : bases) {
    squares += (base - curve.base_fog) * (base - curve.base_fog);
  }
  curve.base_fog_doubt = std::sqrt(squares / count);
}

/// Standard uncertainty at each place, from the draws.
void tell_doubt(FittedCurve& curve) {
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

}  // namespace

double CommonDoubt::at(double net_density_there) const {
  const auto above = std::lower_bound(net_density.begin(), net_density.end(), net_density_there);
  if (above == net_density.begin()) {
    return doubt.front();
  }
  if (above == net_density.end()) {
    return doubt.back();
  }
  const auto i = static_cast<std::size_t>(above - net_density.begin());
  const double share =
      (net_density_there - net_density[i - 1]) / (net_density[i] - net_density[i - 1]);
  return doubt[i - 1] + share * (doubt[i] - doubt[i - 1]);
}

Known<FittedCurve> fit_characteristic_curve(const ExposedSteps& exposed, std::uint64_t seed) {
  FittedCurve curve;
  curve.steps = exposed.steps;
  std::stable_sort(curve.steps.begin(), curve.steps.end(),
                   [](const ExposedStep& a, const ExposedStep& b) { return a.log_h < b.log_h; });
  const auto usable = std::count_if(curve.steps.begin(), curve.steps.end(),
                                    [](const ExposedStep& step) { return !step.left_out; });
  if (usable == 1) {
    return fact_of(Unknown::one_exposed_step, {static_cast<double>(fewest_exposed_steps)});
  }
  if (usable < fewest_exposed_steps) {
    return fact_of(Unknown::few_exposed_steps,
                   {static_cast<double>(usable), static_cast<double>(fewest_exposed_steps)});
  }
  const std::vector<ExposedStep> used = tame(exposed, curve.steps);
  curve.begin_log_h = used.front().log_h;
  curve.end_log_h = used.back().log_h;
  const CurveGround ground = curve_ground(exposed, used);
  const std::vector<WeighedShape> all = weighed_shapes(ground);
  if (all.empty()) {
    return Unknown::no_rising_curve;
  }
  tell_curves(curve, all, ground, exposed, seed);
  tell_doubt(curve);
  curve.sure_end_log_h = std::min(curve.end_log_h, curve.mean.log_h_at(exposed.net_limit));
  const auto* const best =
      std::max_element(curve.family_probability.begin(), curve.family_probability.end());
  curve.family = shape_families[static_cast<std::size_t>(best - curve.family_probability.begin())];
  double squares = 0.0;
  for (const ExposedStep& step : used) {
    const double off = step.density - curve.base_fog - curve.mean.density_at(step.log_h);
    squares += off * off;
  }
  curve.residual_rms = std::sqrt(squares / static_cast<double>(used.size()));
  return curve;
}

}  // namespace fogline
