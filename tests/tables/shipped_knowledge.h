// The shipped knowledge, for tests and benches.
#pragma once

#include <fogline/roll/measure_roll.h>
#include <fogline/tables/prior_knowledge.h>

#include <memory>

namespace fogline {

/// Read once.
inline const PriorKnowledge& shipped_knowledge() {
  static const PriorKnowledge knowledge = shipped_prior_knowledge();
  return knowledge;
}

/// Options that hold nothing but it.
inline MeasureOptions shipped_options() {
  MeasureOptions options;
  options.knowledge = std::make_shared<const ScanKnowledge>(shipped_knowledge().scan);
  return options;
}

}  // namespace fogline
