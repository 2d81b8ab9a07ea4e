#include "process/causes/fog_cause.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

constexpr int fog_steps = 48;
/// Channels further apart than this share of what is above the usual: a coloured veil, not fog.
constexpr double coloured_share = 0.5;
constexpr double coloured_penalty = 0.2;
constexpr double least_confidence = 0.2;
/// From this on fog is said as what happened.
constexpr double told = 0.5;
/// Colour film's mask is named from this probability on.
constexpr double worth_a_word = 0.05;

double normal_density(double value, double mean, double sd) {
  const double deviation = (value - mean) / sd;
  return std::exp(-0.5 * deviation * deviation) / sd;
}

/// How base plus fog of film without fault is spread.
class UsualBase {
 public:
  UsualBase(FilmFormat format, double reading_sd, const RollPopulation& population)
      : reading_sd_(reading_sd), population_(population) {
    grey_share_ = format == FilmFormat::f135      ? 1.0 - population.clear_base_share_135
                  : format == FilmFormat::unknown ? population.share_135_of_unknown
                                                  : 0.0;
  }

  [[nodiscard]] double likelihood(double density) const {
    return grey_share_ * normal_density(density, population_.grey_base_density,
                                        std::hypot(population_.grey_base_sd, reading_sd_)) +
           (1.0 - grey_share_) * normal_density(density, population_.clear_base_density,
                                                std::hypot(population_.clear_base_sd, reading_sd_));
  }

  [[nodiscard]] double usual() const {
    return grey_share_ > 0.0 ? population_.grey_base_density : population_.clear_base_density;
  }

 private:
  double reading_sd_;
  RollPopulation population_;
  double grey_share_ = 0.0;
};

double fogged_likelihood(const UsualBase& base, double density, const RollPopulation& population) {
  const double step =
      std::log(population.greatest_fog_density / population.least_fog_density) / fog_steps;
  double sum = 0.0;
  for (int i = 0; i < fog_steps; ++i) {
    const double fog = population.least_fog_density * std::exp(step * (i + 0.5));
    sum += base.likelihood(density - fog);
  }
  return sum / fog_steps;
}

bool coloured(const RollMeasurement& roll, double excess) {
  return std::any_of(roll.scans.begin(), roll.scans.end(), [&](const ScanMeasurement& scan) {
    if (!scan.base_fog || !scan.base_fog->channels) {
      return false;
    }
    const auto& channels = *scan.base_fog->channels;
    const auto [least, greatest] =
        std::minmax({channels[0].value, channels[1].value, channels[2].value});
    return greatest - least > coloured_share * excess;
  });
}

bool seen_in_grey(const RollMeasurement& roll) {
  return std::all_of(roll.scans.begin(), roll.scans.end(), [](const ScanMeasurement& scan) {
    return !scan.base_fog || scan.info.channels == 1;
  });
}

}  // namespace

std::optional<Finding> fog_finding(const RollMeasurement& roll, const LightSigns& signs,
                                   const RollPopulation& population, const RollCard* card) {
  if (!signs.base_fog) {
    return std::nullopt;
  }
  const double density = signs.base_fog->value;
  const UsualBase base(signs.format, signs.base_fog->u95 / coverage_factor_95, population);
  const double excess = density - base.usual();
  double fogged = population.fogged_share * fogged_likelihood(base, density, population);
  if (excess <= 0.0) {
    return std::nullopt;
  }
  if (coloured(roll, excess)) {
    fogged *= coloured_penalty;
  }
  const double clean = (1.0 - population.fogged_share) * base.likelihood(density);
  const bool maybe_masked = (card == nullptr || !card->film_type) && seen_in_grey(roll);
  const double reading_sd = signs.base_fog->u95 / coverage_factor_95;
  const double masked =
      maybe_masked
          ? population.mask_share * normal_density(density, population.mask_density,
                                                   std::hypot(population.mask_sd, reading_sd))
          : 0.0;
  const double all = fogged + clean + masked;
  const double confidence = fogged / all;
  if (!(confidence >= least_confidence)) {
    return std::nullopt;
  }
  Finding finding = finding_of(Cause::fogged, confidence);
  if (confidence >= told) {
    finding.statements.push_back(fact_of(CauseStatement::fogged, {excess}));
  } else {
    finding.statements.push_back(fact_of(CauseStatement::perhaps_fogged));
  }
  finding.evidence.push_back(fact_of(Evidence::base_fog_excess, {density, base.usual()}));
  if (masked > worth_a_word * all) {
    finding.evidence.push_back(fact_of(Evidence::grey_scan_of_mask));
  }
  return finding;
}

}  // namespace fogline
