#pragma once

#include "process/roll_population.h"

#include <fogline/process/light_and_development.h>

#include <utility>

namespace fogline {

/// What "main cause" means, of a roll whose exposure error and contrast were known.
///
/// Exposure counts only beyond the latitude, contrast only beyond the aim's tolerance. Where
/// neither counts the roll is normal; where one counts, that is the cause; where both do, the one
/// that moves the net density of the middle tone further. To first order one stop moves it by 0.301
/// times the aim's contrast index, and a share of contrast by that share of the middle tone's
/// density, so that both compare whatever the aim: with a middle tone of 0.70 at index 0.58, 20 %
/// of contrast weigh as much as 0.8 stop.
class CauseRegions {
 public:
  CauseRegions(Aim aim, const RollPopulation& population)
      : aim_(std::move(aim)), population_(population) {}

  /// Exposure error (stops) beyond which exposure is the main cause at this contrast.
  [[nodiscard]] double exposure_threshold_stops(double contrast_index) const;

  /// Probabilities of the causes at this contrast where the exposure error is normally distributed.
  [[nodiscard]] CauseProbabilities causes(double contrast_index, double mean_stops,
                                          double sd_stops) const;

 private:
  Aim aim_;
  RollPopulation population_;
};

/// Adds `weight` times `more` to `sum`.
void add_causes(CauseProbabilities& sum, const CauseProbabilities& more, double weight);

}  // namespace fogline
