// Random wedges and the scanners that scan them.
#pragma once

#include "simulator/scenario.h"
#include "simulator/wedge_scan.h"

namespace filmsim {

struct WedgeKind {
  bool large = false;       ///< a page of pixels, everything that may go wrong with a wedge
  bool like_silver = true;  ///< the film scatters as the wedge does
  bool stray_light = true;  ///< false: the same scanner without its glare
};

/// A strip of film and a wedge scanned with one device at one setting: the device bends its codes.
/// The strip's own truth comes from rendering it.
struct CalibratedPair {
  Scenario strip;
  WedgePlan wedge;
  /// Even patches of the strip's silver, scanned as a wedge is: what no calibration was shown.
  WedgePlan patches;
  double certificate_u95 = 0.01;
};

CalibratedPair sample_pair(const WedgeKind& kind, std::uint64_t seed);

}  // namespace filmsim
