#include "tint/veil_posterior.h"

#include "base/seeded_noise.h"
#include "tables/shipped_knowledge.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr double reading_sd = 0.002;

TintEvidence evidence_of(const PerChannel<double>& veil, bool told) {
  TintEvidence evidence;
  evidence.clear = contrast_of(veil);
  evidence.clear_sd = reading_sd;
  evidence.base_told = told;
  return evidence;
}

const TintKnowledge& tints() {
  return shipped_knowledge().scan.tints;
}

/// The shipped populations where a roll is clean or has dye left.
TintKnowledge only(double none, double dye) {
  TintKnowledge knowledge = tints();
  knowledge.shares = {none, dye, 0.0, 0.0, 0.0, 0.0, 0.0};
  return knowledge;
}

/// The dye's likelihood over that of a clean base, by a sum over very many amounts.
double dye_odds(const TintEvidence& evidence) {
  const double sd = std::hypot(
      reading_sd, evidence.base_told ? tints().told_base_sd_density : tints().own_sd_density);
  const auto fit = [&](const Contrast& colour, double amount) {
    const double x = (evidence.clear[0] - amount * colour[0]) / sd;
    const double y = (evidence.clear[1] - amount * colour[1]) / sd;
    return std::exp(-0.5 * (x * x + y * y));
  };
  const VeilPopulation& dye = tints().dye;
  const double range = std::log(dye.most_density / dye.least_density);
  constexpr int steps = 20000;
  double sum = 0.0;
  for (const TintSignature& signature : dye.signatures) {
    for (int i = 0; i < steps; ++i) {
      const double amount = dye.least_density * std::exp(range * (i + 0.5) / steps);
      sum += signature.weight * fit(contrast_of(signature.share), amount) / steps;
    }
  }
  return sum / fit({0.0, 0.0}, 0.0);
}

TEST(VeilPosterior, AgreesWithASumOverAllAmounts) {
  for (const bool told : {false, true}) {
    for (const double amount : {0.0, 0.01, 0.02, 0.03}) {
      const TintEvidence evidence = evidence_of({0.1 * amount, amount, 0.0}, told);
      const double odds = 0.2 / 0.8 * dye_odds(evidence);
      const VeilPosterior posterior = veil_posterior(evidence, only(0.8, 0.2));
      EXPECT_NEAR(posterior.none, 1.0 / (1.0 + odds), 0.005) << amount << told;
      EXPECT_NEAR(none_probability(evidence, evidence.clear, only(0.8, 0.2)), posterior.none, 1e-9);
    }
  }
}

TEST(VeilPosterior, ProbabilitiesSumToOne) {
  const VeilPosterior posterior = veil_posterior(evidence_of({0.0, 0.03, 0.02}, false), tints());
  EXPECT_NEAR(posterior.none + posterior.mask + posterior.strongest.total(), 1.0, 1e-9);
  EXPECT_NEAR(posterior.veiled(), posterior.strongest.total(), 1e-9);
}

TEST(VeilPosterior, SharesAndPopulationsAreComplete) {
  // Bound one by one: a share more asks to be summed here.
  const auto& [none, dye, haze, yellow, dye_and_haze, dye_and_yellow, mask] = tints().shares;
  EXPECT_NEAR(none + dye + haze + yellow + dye_and_haze + dye_and_yellow + mask, 1.0, 1e-12);
  for (const VeilPopulation* veil : {&tints().dye, &tints().haze, &tints().yellow, &tints().mask}) {
    double signatures = 0.0;
    for (const TintSignature& signature : veil->signatures) {
      signatures += signature.weight;
      EXPECT_DOUBLE_EQ(*std::max_element(signature.share.begin(), signature.share.end()), 1.0);
    }
    double patchy = 0.0;
    for (const Weighted& patchiness : veil->patchiness) {
      patchy += patchiness.weight;
    }
    EXPECT_NEAR(signatures, 1.0, 1e-9);
    EXPECT_NEAR(patchy, 1.0, 1e-9);
  }
}

// Scattering by particles far smaller than the wavelength goes as its fourth power (Rayleigh 1871);
// milky film's lies between that and none.
TEST(VeilPosterior, HazeScattersBlueMost) {
  for (const TintSignature& signature : tints().haze.signatures) {
    EXPECT_LT(signature.share[0], signature.share[1]);
    EXPECT_LT(signature.share[1], signature.share[2]);
    EXPECT_GT(signature.share[0], std::pow(450.0 / 610.0, 4.0));
  }
}

TEST(VeilPosterior, TextureTellsHazeFromStain) {
  TintEvidence evidence = evidence_of({0.03, 0.04, 0.07}, false);
  evidence.texture_freedom = 6.0;
  evidence.texture_noise_variance = 0.0004 * 0.0004;
  evidence.texture_variance = 0.0005 * 0.0005;
  const VeilPosterior even = veil_posterior(evidence, tints());
  evidence.texture_variance = 0.01 * 0.01;
  const VeilPosterior patchy = veil_posterior(evidence, tints());
  EXPECT_GT(even.yellow.total(), even.haze.total());
  EXPECT_GT(patchy.haze.total(), 4.0 * patchy.yellow.total());
}

// Amounts drawn from the population itself lie within the interval 95 times in 100.
TEST(VeilPosterior, IntervalCoversThePopulation) {
  SeededNoise random(5);
  const VeilPopulation& dye = tints().dye;
  constexpr int draws = 400;
  int covered = 0;
  for (int i = 0; i < draws; ++i) {
    const double amount = 0.05 * std::pow(6.0, random.uniform());
    double pick = random.uniform();
    std::size_t k = 0;
    while (k + 1 < dye.signatures.size() && pick > dye.signatures[k].weight) {
      pick -= dye.signatures[k++].weight;
    }
    PerChannel<double> veil{};
    for (std::size_t c = 0; c < veil.size(); ++c) {
      veil[c] = amount * dye.signatures[k].share[c] + random.normal(tints().own_sd_density);
    }
    const VeilPosterior posterior = veil_posterior(evidence_of(veil, false), only(0.5, 0.5));
    covered += posterior.dye.quantile(0.025) <= amount && posterior.dye.quantile(0.975) >= amount;
  }
  EXPECT_GT(covered, 0.93 * draws);
  EXPECT_LT(covered, 0.99 * draws);
}

TEST(VeilPosterior, MaskIsNotTakenForStain) {
  EXPECT_GT(veil_posterior(evidence_of({0.25, 0.6, 0.9}, false), tints()).mask, 0.99);
  EXPECT_LT(veil_posterior(evidence_of({0.0, 0.05, 0.2}, false), tints()).mask, 0.01);
}

}  // namespace
}  // namespace fogline
