// Simulated people who develop at home, for the bench of the advice: how their contrast truly
// grows, what they write on a roll card, what a scan tells them. Every number here is invented, and
// the growth has another form than the one the product fits: part of the films follow the law of
// log time (Nietz 1922), part a power of time. Shares nothing with src.
#pragma once

#include "simulator/random.h"

namespace bench {

/// Standard deviation of one roll about its person's habits, share of contrast.
inline constexpr double true_scatter_share = 0.052;

/// Growth of contrast with effort: time over the time that the maker publishes, rate included.
struct TrueGrowth {
  bool log_law = true;  // else a power law
  double limit = 1.1;
  double exponent = 0.6;  // d ln c / d ln t at the published time

  [[nodiscard]] double contrast(double effort) const;
  /// Effort that gives a contrast; 0 where none does.
  [[nodiscard]] double effort_for(double contrast) const;
};

struct Person {
  bool tabular = false;
  TrueGrowth growth;
  double published_min_at_20 = 8.0;
  double q10 = 2.3;
  /// Rate against the published one: agitation, water, developer, batch of thermometer.
  double habit = 1.0;
  double temperature_c = 20.0;  // as read
  double thermometer_bias_c = 0.0;
  double time_min = 8.0;  // as set, by the maker's chart

  /// Effort of a time at a temperature as read.
  [[nodiscard]] double effort(double minutes, double at_c) const;
  /// Contrast that the habits give.
  [[nodiscard]] double contrast(double minutes, double at_c) const;
  /// The time that would be right for `aim`, minutes; 0 where none is.
  [[nodiscard]] double right_minutes(double aim, double at_c) const;
};

/// Contrast that published times aim at.
inline constexpr double published_contrast = 0.58;

TrueGrowth draw_growth(filmsim::Random& random, bool tabular);
/// Draws habit, thermometer and developer anew for a film of known type.
void draw_habits(filmsim::Random& random, Person& person);
Person draw_person(filmsim::Random& random);

/// What a scan tells of one roll's contrast: the reading, and the belief after what is known of
/// rolls in general has been weighed in.
struct ContrastRead {
  double reading = 0.0;
  double reading_sd_share = 0.0;
  double believed = 0.0;
  double believed_u95 = 0.0;
};

ContrastRead read_contrast(filmsim::Random& random, double true_contrast, double sd_share,
                           double aim);

}  // namespace bench
