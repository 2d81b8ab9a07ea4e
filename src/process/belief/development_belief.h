#pragma once

#include "process/process_priors.h"

#include <fogline/base/quantity.h>

#include <optional>
#include <vector>

// What may lie behind one roll's contrast.
//
// One roll gives one contrast at one time: it fixes where the growth curve passes, not how steeply.
// The steepness comes from prior knowledge, but not freely: a curve through that contrast has a
// limit of contrast, and limits that such films don't have are as good as ruled out. So, for each
// contrast that the person's habits may give at that time,
//
//   p(rate, start, time | contrast)  ~  p(rate | time) p(start) p(time) p(limit = contrast / grown)
//
// with `grown` the share of its limit that the curve reaches in that time. Rate and time aren't
// independent: people set the times that makers publish, and makers publish long times for slow
// developers and cool baths. So the rate scales with one over the time.
//
// The contrast given is itself a belief that prior knowledge of rolls went into (LightOrTime), so
// it isn't weighed with p(limit) again: each contrast keeps its own weight. A fixed grid stands for
// the integrals; no chance is involved.

namespace fogline {

/// The roll at hand, as far as its development is known. Temperatures are means over the
/// development, degrees Celsius.
struct DevelopedRoll {
  /// Mean and u95 of the roll's contrast index.
  Quantity contrast_index;
  double aim = 0.0;
  std::optional<double> time_min;
  std::optional<double> temperature_c;
  /// Of the next roll, where it differs from this one's.
  std::optional<double> next_temperature_c;
};

/// One case of how the person's rolls develop.
struct DevelopmentCase {
  double weight = 0.0;
  /// Contrast that the habits gave this time, without the chance of one roll.
  double contrast = 0.0;
  double time_min = 0.0;
  /// This roll's curve, and the next one's at its own temperature.
  double contrast_limit = 0.0;
  double rate_per_min = 0.0;
  double next_rate_per_min = 0.0;
  double start_min = 0.0;

  /// Contrast that the habits give after `time_share` times this roll's time, at the next roll's
  /// temperature.
  [[nodiscard]] double contrast_after_share(double time_share) const;
  /// Share of this roll's time that gives `contrast`; nothing where no time does.
  [[nodiscard]] std::optional<double> share_for_contrast(double contrast_wanted) const;
};

/// All that may lie behind a roll; weights sum to 1.
struct DevelopmentBelief {
  std::vector<DevelopmentCase> cases;
  /// Standard deviation of one roll about what the habits give, share of contrast.
  double roll_scatter_share = 0.0;

  /// Chance that the next roll lands within `tolerance` of `aim`.
  [[nodiscard]] double chance_within(double aim, double tolerance, double time_share) const;
  /// Chance that `time_share` brings the habits nearer to `aim` than they are.
  [[nodiscard]] double chance_of_help(double aim, double time_share) const;
  /// Chance that no time reaches `aim`.
  [[nodiscard]] double chance_out_of_reach(double aim) const;
  /// The next roll's contrast: mean, and the half-width about it that holds 95 in 100.
  [[nodiscard]] Quantity contrast_of_next(double time_share) const;
  /// Half-width about `time_share` that holds the share which is right for `aim` 95 times in 100;
  /// nothing where too much of the belief reaches it at no time.
  [[nodiscard]] std::optional<double> share_u95(double aim, double time_share) const;
};

/// The belief about `roll`'s development, for film that grows like `kinetics`.
DevelopmentBelief believe_development(const DevelopedRoll& roll, const FilmKinetics& kinetics,
                                      const DevelopmentPriors& priors);

}  // namespace fogline
