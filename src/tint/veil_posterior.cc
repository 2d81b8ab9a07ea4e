#include "tint/veil_posterior.h"

#include "tint/texture_likelihood.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace fogline {

namespace {

/// Amounts are walked over this many standard deviations to either side of what the colour says, in
/// this many steps: the trapezoidal rule is then exact to a thousandth.
constexpr double reach_sd = 4.0;
constexpr int single_steps = 24;
constexpr int pair_steps = 12;

double dot(const Contrast& a, const Contrast& b) {
  return a[0] * b[0] + a[1] * b[1];
}

/// Amounts to integrate over: a centre and its standard deviation, within the population.
struct AmountWalk {
  double from = 0.0;
  double step = 0.0;
};

AmountWalk walk(const VeilPopulation& veil, double centre, double sd, int steps) {
  // A centre outside the population leaves its nearest end to walk on.
  const double nearest = std::clamp(centre, veil.least_density, veil.most_density);
  const double from = std::max(veil.least_density, nearest - reach_sd * sd);
  const double to = std::min(veil.most_density, nearest + reach_sd * sd);
  return {from, (to - from) / steps};
}

/// Log-uniform prior.
double prior_density(const VeilPopulation& veil, double amount) {
  return 1.0 / (amount * std::log(veil.most_density / veil.least_density));
}

double blue_less_red(const TintSignature& signature) {
  return signature.share[2] - signature.share[0];
}

/// Gathers weights of all models; the posterior is made of them once they are complete.
class VeilSum {
 public:
  VeilSum(const TintEvidence& evidence, const TintKnowledge& knowledge)
      : evidence_(evidence),
        knowledge_(knowledge),
        sd_(std::hypot(evidence.clear_sd, evidence.base_told ? knowledge.told_base_sd_density
                                                             : knowledge.own_sd_density)) {}

  void add_none(double share) {
    const TextureLikelihood texture(evidence_, {{0.0, 1.0}}, knowledge_.clean_textures);
    none_ += share * texture.at(0.0) * fit(evidence_.clear);
  }

  /// `into` receives amounts and weights.
  template <typename Into>
  void add_single(const VeilPopulation& veil, double share, Into into) {
    const TextureLikelihood texture(evidence_, veil.patchiness, knowledge_.clean_textures);
    const Contrast& clear = evidence_.clear;
    for (const TintSignature& signature : veil.signatures) {
      const Contrast colour = contrast_of(signature.share);
      const double square = dot(colour, colour);
      const AmountWalk amounts =
          walk(veil, dot(colour, clear) / square, sd_ / std::sqrt(square), single_steps);
      for (int i = 0; i <= single_steps; ++i) {
        const double amount = amounts.from + i * amounts.step;
        const double likelihood =
            fit({clear[0] - amount * colour[0], clear[1] - amount * colour[1]}) *
            texture.at(amount * blue_less_red(signature));
        const double end = i == 0 || i == single_steps ? 0.5 : 1.0;
        into(amount, share * signature.weight * end * amounts.step * prior_density(veil, amount) *
                         likelihood);
      }
    }
  }

  /// Two veils at once; the texture is that of `patchy`, the stronger in texture.
  template <typename Into>
  void add_pair(const VeilPopulation& even, const VeilPopulation& patchy, double share, Into into) {
    const TextureLikelihood texture(evidence_, patchy.patchiness, knowledge_.clean_textures);
    for (const TintSignature& a : even.signatures) {
      for (const TintSignature& b : patchy.signatures) {
        const double pair_weight = share * a.weight * b.weight;
        walk_pair(even, a, patchy, b, [&](double amount_a, double amount_b, double w) {
          into(amount_a, amount_b, pair_weight * w * texture.at(amount_b * blue_less_red(b)));
        });
      }
    }
  }

  [[nodiscard]] double none() const { return none_; }
  [[nodiscard]] double best_fit() const { return best_fit_; }

 private:
  /// Likelihood of what is left of the colour.
  double fit(const Contrast& left) {
    const double likelihood = std::exp(-0.5 * dot(left, left) / (sd_ * sd_));
    best_fit_ = std::max(best_fit_, likelihood);
    return likelihood;
  }

  template <typename Into>
  void walk_pair(const VeilPopulation& first, const TintSignature& a, const VeilPopulation& second,
                 const TintSignature& b, Into into) {
    const Contrast& clear = evidence_.clear;
    const Contrast pa = contrast_of(a.share);
    const Contrast pb = contrast_of(b.share);
    const double square = dot(pb, pb);
    // With b free, only the part of a's colour across b's tells a.
    const double along = dot(pa, pb) / square;
    const Contrast across{pa[0] - along * pb[0], pa[1] - along * pb[1]};
    const double across_square = std::max(1e-6, dot(across, across));
    const AmountWalk walk_a =
        walk(first, dot(across, clear) / across_square, sd_ / std::sqrt(across_square), pair_steps);
    for (int i = 0; i <= pair_steps; ++i) {
      const double amount_a = walk_a.from + i * walk_a.step;
      const Contrast left{clear[0] - amount_a * pa[0], clear[1] - amount_a * pa[1]};
      const AmountWalk walk_b =
          walk(second, dot(pb, left) / square, sd_ / std::sqrt(square), pair_steps);
      for (int j = 0; j <= pair_steps; ++j) {
        const double amount_b = walk_b.from + j * walk_b.step;
        const double ends =
            (i == 0 || i == pair_steps ? 0.5 : 1.0) * (j == 0 || j == pair_steps ? 0.5 : 1.0);
        into(amount_a, amount_b,
             ends * walk_a.step * walk_b.step * prior_density(first, amount_a) *
                 prior_density(second, amount_b) *
                 fit({left[0] - amount_b * pb[0], left[1] - amount_b * pb[1]}));
      }
    }
  }

  const TintEvidence& evidence_;
  const TintKnowledge& knowledge_;
  double sd_;
  double none_ = 0.0;
  double best_fit_ = 0.0;
};

}  // namespace

VeilPosterior veil_posterior(const TintEvidence& evidence, const TintKnowledge& knowledge) {
  VeilPosterior raw;
  VeilSum sum(evidence, knowledge);
  const VeilShares& shares = knowledge.shares;
  sum.add_none(shares.none);
  const auto single = [&](AmountDistribution& veil) {
    return [&](double amount, double weight) {
      veil.add(amount, weight);
      raw.strongest.add(amount, weight);
    };
  };
  const auto pair = [&](AmountDistribution& other) {
    return [&](double dye, double amount, double weight) {
      raw.dye.add(dye, weight);
      other.add(amount, weight);
      raw.strongest.add(std::max(dye, amount), weight);
    };
  };
  sum.add_single(knowledge.dye, shares.dye, single(raw.dye));
  sum.add_single(knowledge.haze, shares.haze, single(raw.haze));
  sum.add_single(knowledge.yellow, shares.yellow, single(raw.yellow));
  sum.add_pair(knowledge.dye, knowledge.haze, shares.dye_and_haze, pair(raw.haze));
  sum.add_pair(knowledge.dye, knowledge.yellow, shares.dye_and_yellow, pair(raw.yellow));
  if (!evidence.base_told) {
    sum.add_single(knowledge.mask, shares.mask, [&](double, double weight) { raw.mask += weight; });
  }
  raw.none = sum.none();
  raw.misfit = -2.0 * std::log(std::max(sum.best_fit(), 1e-300));
  const double total = raw.none + raw.mask + raw.strongest.total();
  if (total > 0.0) {
    raw.none /= total;
    raw.mask /= total;
    for (AmountDistribution* part : {&raw.dye, &raw.haze, &raw.yellow, &raw.strongest}) {
      part->scale(1.0 / total);
    }
  }
  return raw;
}

double none_probability(TintEvidence evidence, const Contrast& clear,
                        const TintKnowledge& knowledge) {
  const VeilShares& shares = knowledge.shares;
  evidence.clear = clear;
  evidence.texture_freedom = 0.0;
  VeilSum sum(evidence, knowledge);
  sum.add_none(shares.none);
  double veiled = 0.0;
  const auto add = [&](double, double weight) { veiled += weight; };
  sum.add_single(knowledge.dye, shares.dye, add);
  sum.add_single(knowledge.haze, shares.haze, add);
  sum.add_single(knowledge.yellow, shares.yellow, add);
  const double total = sum.none() + veiled;
  return total > 0.0 ? sum.none() / total : 0.0;
}

}  // namespace fogline
