// The shipped knowledge, for tests and benches.
#pragma once

#include "process/prior_knowledge.h"

#include <fogline/roll/measure_roll.h>
#include <fogline/tables/read_tables.h>

#include <memory>

namespace fogline {

/// Read once.
inline const PriorKnowledge& shipped_knowledge() {
  static const auto knowledge = shipped_prior_knowledge();
  return *knowledge;
}

/// Options that hold nothing but it.
inline MeasureOptions shipped_options() {
  MeasureOptions options;
  options.knowledge = shipped_scan_knowledge();
  return options;
}

}  // namespace fogline
