// Rolls of known faults, rendered as scans, measured and judged as the program does.
#pragma once

#include "cause_limit.h"
#include "cause_scores.h"

#include <fogline/process/finding.h>
#include <fogline/process/judge_roll.h>

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bench {

/// Whether contrast and exposure lie within the u95 told.
class Coverage {
 public:
  void add(const fogline::LightOrTime& weighed, const filmsim::RollFaults& faults);
  void print() const;

 private:
  std::size_t cases_ = 0;
  std::size_t contrast_covered_ = 0;
  std::size_t exposure_covered_ = 0;
  double contrast_u95_ = 0.0;
  double exposure_u95_ = 0.0;
  double contrast_error_ = 0.0;
  double contrast_square_ = 0.0;
  double exposure_error_ = 0.0;
  double exposure_square_ = 0.0;
};

struct ScannedRoll {
  std::uint64_t seed = 0;
  filmsim::RollFaults faults;
  /// The truth of the frames in the scan, in the scanner's light; absent without pictures.
  std::optional<RollReading> truth;
  fogline::LightOrTime weighed;
  std::vector<fogline::Finding> findings;
  std::optional<double> net_shadow;
  std::optional<double> net_highlight;
  double judge_ms = 0.0;
  std::string trouble;
};

std::vector<ScannedRoll> scan_rolls(int count, std::uint64_t first_seed, unsigned jobs,
                                    const fogline::PriorKnowledge& knowledge);

void print_scanned(const std::vector<ScannedRoll>& rolls, const CauseLimit& limit, bool list);

}  // namespace bench
