// How well probabilities hold: share right, Brier and log score, reliability.
#pragma once

#include "simulator/roll_faults.h"

#include <fogline/process/light_and_development.h>

#include <array>
#include <cstddef>
#include <vector>

namespace bench {

/// In the order normal, under-exposed, over-exposed, under-developed, over-developed.
inline constexpr std::size_t cause_count = 5;
inline constexpr std::array<const char*, cause_count> cause_names{
    "normal", "under-exposed", "over-exposed", "under-developed", "over-developed"};

using CauseShares = std::array<double, cause_count>;

CauseShares shares_of(const fogline::CauseProbabilities& causes);

/// The main cause of a roll whose faults are known, by the definition of the product (its private
/// header says why); the aim is 0.58 within 0.05, the latitude two thirds of a stop.
std::size_t true_cause(const filmsim::RollFaults& faults);

struct CauseCase {
  CauseShares said{};
  std::size_t truth = 0;
};

struct CauseScore {
  double top_right = 0.0;
  double brier = 0.0;
  double log_score = 0.0;
  /// No cause reached 0.5.
  double cant_tell = 0.0;
  /// Right among those told.
  double told_right = 0.0;
  std::size_t cases = 0;
};

CauseScore score(const std::vector<CauseCase>& cases);
void print_score(const char* name, const CauseScore& score);

/// One thing said with a probability, and whether it was so.
struct Said {
  double confidence = 0.0;
  bool so = false;
};

void print_reliability(const char* name, const std::vector<Said>& said);
std::vector<Said> all_said(const std::vector<CauseCase>& cases);
/// Rows: truth; columns: top cause.
void print_confusion(const std::vector<CauseCase>& cases);

}  // namespace bench
