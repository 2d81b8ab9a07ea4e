// Rolls of known faults without pictures: what a perfect reader would see of them, by the hundred
// thousand. The same population as the rendered scans, so that what can be told at all can be told.
#pragma once

#include "simulator/roll_faults.h"

#include <fogline/roll/roll_measurement.h>

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

namespace bench {

/// What is read of a roll: net densities in the scanner's light, medians over frames.
struct RollReading {
  double shadow = 0.0;
  double highlight = 0.0;
  double edge_print = 0.0;
  std::optional<double> leader;
  int frames = 5;
  filmsim::RollFaults faults;
  /// Log exposure of shadow and highlight from the speed point less the roll's exposure error,
  /// medians over frames: how the roll's subjects lie.
  double shadow_log_h = 0.0;
  double highlight_log_h = 0.0;
};

class Pools;

/// Draws rolls with pictures (exposed, developed, not fogged). Scenes, and stocks with their
/// development, come from pools (drawing them is slow); light and subjects are drawn afresh.
class RollDrawer {
 public:
  explicit RollDrawer(std::uint64_t seed);
  ~RollDrawer();
  RollDrawer(const RollDrawer&) = delete;
  RollDrawer& operator=(const RollDrawer&) = delete;

  [[nodiscard]] std::vector<RollReading> draw(std::size_t count, std::uint64_t seed) const;

 private:
  std::unique_ptr<Pools> pools_;
};

/// A measurement that says just that.
fogline::RollMeasurement as_measurement(const RollReading& reading);

}  // namespace bench
