#include "tint/judge_tint.h"

#include "tint/stain_posterior.h"
#include "tint/veil_posterior.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace fogline {

namespace {

/// A kind is named from this probability on; below it a tint is told without its kind.
constexpr double named_probability = 0.5;
/// Squared misfit beyond which no population explains the colour: 1 in 1000 of chi squared with
/// two degrees of freedom.
constexpr double most_misfit = 13.8;
/// The detection limit is the amount that is told nine times in ten.
constexpr double nine_in_ten_sd = 1.2816;

/// Amount with the interval that covers it 95 times in 100. The tone curve scales the amount;
/// `stretch_95` is how much larger it may be than it reads, as a share (95 %).
Quantity amount_of(const AmountDistribution& amounts, double curve_share, double stretch_95) {
  constexpr double tail = 0.025;
  Quantity quantity;
  quantity.value = amounts.quantile(0.5);
  const double scale = coverage_factor_95 * curve_share * quantity.value;
  const double below = std::hypot(quantity.value - amounts.quantile(tail), scale);
  const double above = std::hypot(std::hypot(amounts.quantile(1.0 - tail) - quantity.value, scale),
                                  stretch_95 * quantity.value);
  quantity.lower95 = std::max(0.0, quantity.value - below);
  quantity.upper95 = quantity.value + above;
  quantity.u95 = std::max(below, above);
  return quantity;
}

/// Amount of a veil of colour `signature` at which clear film is told as veiled, nine scans in ten.
double limit_for(const TintEvidence& evidence, const PerChannel<double>& signature,
                 const TintKnowledge& knowledge) {
  const Contrast colour = contrast_of(signature);
  double least = 0.0;
  double most = 1.0;
  constexpr int halvings = 14;
  for (int i = 0; i < halvings; ++i) {
    const double amount = 0.5 * (least + most);
    const Contrast clear{amount * colour[0], amount * colour[1]};
    (1.0 - none_probability(evidence, clear, knowledge) < told_probability ? least : most) = amount;
  }
  const double sd =
      std::hypot(evidence.clear_sd,
                 evidence.base_told ? knowledge.told_base_sd_density : knowledge.own_sd_density);
  return most + nine_in_ten_sd * sd / std::hypot(colour[0], colour[1]);
}

/// The least pink, blue or yellow veil that shows; milky film shows later, unless by its texture.
double detection_limit_of(const TintEvidence& evidence, const TintKnowledge& knowledge) {
  double limit = 0.0;
  for (const PerChannel<double>& signature : knowledge.limit_signatures) {
    limit = std::max(limit, limit_for(evidence, signature, knowledge));
  }
  return limit;
}

void add_component(Tint& tint, TintKind kind, const AmountDistribution& amounts,
                   const TintLimits& limits, double stretch_95) {
  if (amounts.total() >= named_probability) {
    tint.components.push_back(
        {kind, amount_of(amounts, limits.curve_share, stretch_95), amounts.total()});
  }
}

Tint untold(Tint tint, Unknown why) {
  tint.kind = why;
  tint.density = why;
  return tint;
}

/// Nothing told: clean down to the detection limit, or not to be told.
void tell_none(Tint& tint, const VeilPosterior& veils, const StainPosterior& stain,
               double useful_limit_density) {
  const double limit = *tint.detection_limit;
  const double clean = (veils.none + veils.strongest.below(limit)) * (1.0 - stain.stain.total());
  if (limit > useful_limit_density) {
    tint = untold(std::move(tint), Unknown::only_strong_tints);
  } else if (veils.misfit > most_misfit) {
    tint = untold(std::move(tint), Unknown::colour_of_no_tint);
  } else if (clean < named_probability) {
    tint = untold(std::move(tint), Unknown::trace_of_colour);
  } else {
    tint.kind = TintKind::none;
    tint.confidence = clean;
    tint.density = Quantity{0.0, limit, {}, 0.0, limit, false};
  }
}

void name_strongest(Tint& tint) {
  std::sort(tint.components.begin(), tint.components.end(),
            [](const TintComponent& a, const TintComponent& b) {
              return a.density.value > b.density.value;
            });
  tint.kind = tint.components.front().kind;
  tint.density = tint.components.front().density;
  tint.confidence = tint.components.front().confidence;
}

}  // namespace

Tint judge_tint(const std::vector<TintSigns>& strips, const TintLimits& limits,
                const TintKnowledge& knowledge) {
  Tint tint;
  tint.may_be_stock = !limits.base_tint.has_value();
  if (strips.empty()) {
    tint.detection_limit = Unknown::no_clear_colour;
    return untold(std::move(tint), Unknown::no_clear_colour);
  }
  const TintEvidence evidence = join_tint_signs(strips, limits);
  const VeilPosterior veils = veil_posterior(evidence, knowledge);
  const StainPosterior stain = stain_posterior(evidence, knowledge);
  tint.detection_limit = detection_limit_of(evidence, knowledge);
  if (veils.mask >= named_probability) {
    return untold(std::move(tint), Unknown::mask_of_colour_stock);
  }
  const bool veiled = veils.veiled() >= told_probability && veils.misfit <= most_misfit;
  if (veiled) {
    add_component(tint, TintKind::dye_left, veils.dye, limits, 0.0);
    add_component(tint, TintKind::fixer_haze, veils.haze, limits, 0.0);
    add_component(tint, TintKind::yellow_stain, veils.yellow, limits, 0.0);
  }
  if (stain.stain.total() >= told_probability) {
    const double stretch = limits.angle_share_95 / (1.0 - limits.angle_share_95);
    add_component(tint, TintKind::image_stain, stain.stain, limits, stretch);
  }
  if (!tint.components.empty()) {
    name_strongest(tint);
  } else if (veiled) {
    tint.kind = Unknown::colour_of_several;
    tint.density = amount_of(veils.strongest, limits.curve_share, 0.0);
    tint.confidence = 0.0;
  } else {
    tell_none(tint, veils, stain, knowledge.useful_limit_density);
  }
  return tint;
}

}  // namespace fogline
