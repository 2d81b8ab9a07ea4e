// The best that anyone could do: an estimator that knows the population itself, from a hundred
// thousand rolls of it.
#pragma once

#include "cause_scores.h"
#include "roll_draws.h"

namespace bench {

/// Shares of causes among the drawn rolls most like the one read (nearest neighbours in shadow,
/// highlight, edge print and leader).
class CauseLimit {
 public:
  explicit CauseLimit(std::vector<RollReading> draws);

  [[nodiscard]] CauseShares causes(const RollReading& reading) const;

 private:
  std::vector<RollReading> draws_;
  std::vector<std::size_t> truths_;
};

}  // namespace bench
