#pragma once

#include <fogline/base/known.h>
#include <fogline/base/quantity.h>
#include <fogline/process/aim.h>
#include <fogline/process/evidence.h>
#include <fogline/process/further_measurement.h>
#include <fogline/process/roll_population.h>
#include <fogline/roll/roll_measurement.h>

#include <optional>
#include <vector>

namespace fogline {

/// Light or time: how likely each is the main cause of how the roll looks. The five exclude one
/// another and sum to 1 where the roll was judged.
///
/// Exposure counts beyond the population's latitude (two thirds of a stop), development beyond the
/// aim's tolerance (0.05 of contrast index). Where neither counts the roll is normal; where both
/// do, the main cause is the one that moves the net density of the middle tone further: 20 % of
/// contrast weigh as much as 0.8 stop.
struct CauseProbabilities {
  double normal = 0.0;
  double under_exposed = 0.0;
  double over_exposed = 0.0;
  double under_developed = 0.0;
  double over_developed = 0.0;

  friend bool operator==(const CauseProbabilities&, const CauseProbabilities&) = default;
};

/// What a roll's densities say of exposure and development, prior knowledge of rolls included.
struct LightOrTime {
  /// Where exposure wasn't judged, the causes are of development alone.
  Known<CauseProbabilities> causes;
  /// Light received over what the usual placement would give, stops (positive: more), u95.
  Known<Quantity> exposure_stops;
  /// Light within this of the usual placement isn't called wrong, stops.
  double latitude_stops = 0.0;
  /// Contrast index of this roll as believed after looking (posterior mean), u95.
  Known<Quantity> contrast_index;
  /// What was seen: shadows, highlights, edge print, leader, base plus fog.
  std::vector<Fact<Evidence>> evidence;
  /// The one further measurement that would tell most; absent where nothing is open.
  std::optional<FurtherMeasurement> would_tell_most;

  /// Whether anything is said of light and time.
  [[nodiscard]] bool judged() const { return causes.has_value(); }

  friend bool operator==(const LightOrTime&, const LightOrTime&) = default;
};

/// Weighs light against time from the roll's frames, edge print, leader and base plus fog: the
/// posterior over exposure error and contrast, from a stated population of rolls. `card` may be
/// nullptr.
LightOrTime weigh_light_and_time(const RollMeasurement& roll, const Aim& aim,
                                 const RollPopulation& population, const RollCard* card);

}  // namespace fogline
