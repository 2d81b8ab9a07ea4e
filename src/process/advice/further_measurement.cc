#include "process/advice/further_measurement.h"

#include "process/belief/cause_regions.h"
#include "process/belief/normal_grid.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>
#include <vector>

namespace fogline {

namespace {

/// Entropy (nats) below which nothing is open: one cause at about 0.9.
constexpr double settled_nats = 0.4;
/// Share of the entropy that a measurement must be expected to take away to be worth the trouble.
constexpr double worth_share = 0.1;
/// Doubt of contrast, share, that frame numbers against those of a logged roll of the same film
/// leave (common practice, no source).
constexpr double logged_print_sd_share = 0.08;
/// A whole roll of frames; and below how many more frames are asked for.
constexpr int whole_roll = 36;
constexpr int few_frames = 12;
/// What a silver wedge leaves of the scanner's scale, share: 3 to 5 % (common practice).
constexpr double calibrated_sd_share = 0.04;

double entropy(const CauseProbabilities& causes) {
  double nats = 0.0;
  for (const double p : {causes.normal, causes.under_exposed, causes.over_exposed,
                         causes.under_developed, causes.over_developed}) {
    nats -= p > 0.0 ? p * std::log(p) : 0.0;
  }
  return nats;
}

struct AtContrast {
  double log_contrast = 0.0;
  double weight = 0.0;
  /// Causes times weight.
  CauseProbabilities causes;
};

std::vector<AtContrast> by_contrast(const LightBelief& belief, const Aim& aim,
                                    const RollPopulation& population) {
  const CauseRegions regions(aim, population);
  std::map<double, AtContrast> sums;
  for (const BeliefPoint& point : belief.points) {
    AtContrast& at = sums[point.contrast_index];
    at.log_contrast = std::log(point.contrast_index);
    at.weight += point.weight;
    add_causes(
        at.causes,
        regions.causes(point.contrast_index, point.exposure_mean_stops, belief.exposure_sd_stops),
        point.weight);
  }
  std::vector<AtContrast> result;
  result.reserve(sums.size());
  for (const auto& [contrast, at] : sums) {
    result.push_back(at);
  }
  return result;
}

/// Entropy to expect once contrast has been read with this doubt, over all that may be read.
double entropy_after_contrast(const std::vector<AtContrast>& table, double sd_share) {
  constexpr int outcomes = 3;
  double expected = 0.0;
  for (const AtContrast& truth : table) {
    for (const double deviation : normal_slices(outcomes)) {
      const double read = truth.log_contrast + deviation * sd_share;
      CauseProbabilities after;
      double sum = 0.0;
      for (const AtContrast& at : table) {
        const double off = (at.log_contrast - read) / sd_share;
        const double weight = std::exp(-0.5 * off * off);
        sum += weight * at.weight;
        add_causes(after, at.causes, weight);
      }
      CauseProbabilities shares;
      add_causes(shares, after, sum > 0.0 ? 1.0 / sum : 0.0);
      expected += truth.weight * entropy(shares) / outcomes;
    }
  }
  return expected;
}

struct Candidate {
  double nats = 0.0;
  FurtherMeasurement measurement = FurtherMeasurement::meter_walls;
};

std::vector<Candidate> candidates(const LightBelief& belief, const LightSigns& signs,
                                  const ReadingScale& scale, const Aim& aim,
                                  const RollPopulation& population) {
  std::vector<Candidate> list;
  const std::vector<AtContrast> table = by_contrast(belief, aim, population);
  if (signs.edge_print && signs.edge_print->density < population.greatest_edge_print_density &&
      population.edge_print_sd_share > logged_print_sd_share) {
    list.push_back({entropy_after_contrast(table, logged_print_sd_share),
                    FurtherMeasurement::compare_frame_numbers});
  }
  if (!signs.leader && signs.format == FilmFormat::f135) {
    list.push_back({entropy_after_contrast(table, population.leader_sd_share),
                    FurtherMeasurement::scan_leader});
  }
  if (signs.frames < few_frames) {
    list.push_back(
        {entropy(causes_of(believe(signs, whole_roll, scale, aim, population), aim, population)),
         FurtherMeasurement::scan_more_strips});
  }
  if (!signs.calibrated && scale.sd_share > calibrated_sd_share) {
    list.push_back({entropy(causes_of(believe(signs, signs.frames,
                                              {scale.factor, calibrated_sd_share}, aim, population),
                                      aim, population)),
                    FurtherMeasurement::calibrate_scanner});
  }
  return list;
}

}  // namespace

CauseProbabilities causes_of(const LightBelief& belief, const Aim& aim,
                             const RollPopulation& population) {
  const CauseRegions regions(aim, population);
  CauseProbabilities causes;
  for (const BeliefPoint& point : belief.points) {
    add_causes(
        causes,
        regions.causes(point.contrast_index, point.exposure_mean_stops, belief.exposure_sd_stops),
        point.weight);
  }
  return causes;
}

std::optional<FurtherMeasurement> further_measurement(const LightBelief& belief,
                                                      const LightSigns& signs,
                                                      const ReadingScale& scale, const Aim& aim,
                                                      const RollPopulation& population) {
  const double now = entropy(causes_of(belief, aim, population));
  if (now < settled_nats) {
    return std::nullopt;
  }
  const std::vector<Candidate> list = candidates(belief, signs, scale, aim, population);
  const auto best =
      std::min_element(list.begin(), list.end(),
                       [](const Candidate& a, const Candidate& b) { return a.nats < b.nats; });
  if (best == list.end() || best->nats > (1.0 - worth_share) * now) {
    return FurtherMeasurement::meter_walls;
  }
  return best->measurement;
}

}  // namespace fogline
