// The best that anyone could advise from the same information: Bayes with the simulated people's
// own distribution, by brute force over many of them.
#pragma once

#include "advice_people.h"

#include <vector>

namespace bench {

class AdviceLimit {
 public:
  /// Draws `people` alternatives for every person judged.
  explicit AdviceLimit(int people) : people_(people) {}

  struct Best {
    /// Time with the greatest chance of landing.
    double minutes = 0.0;
    /// Mean contrast of this roll as the limit believes it.
    double contrast = 0.0;
  };

  /// The best time for the next roll of someone of whom only card and reading are known, at the
  /// same temperature.
  [[nodiscard]] Best best(const Person& person, bool type_known, const ContrastRead& read,
                          double aim, double tolerance) const;

 private:
  int people_;
};

/// Chance that a roll about `contrast` lands within `tolerance` of `aim`.
double landing_chance(double contrast, double aim, double tolerance);

}  // namespace bench
