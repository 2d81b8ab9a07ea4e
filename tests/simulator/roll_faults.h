// Rolls of known faults: how far light and development were off, and whether the film was fogged,
// never exposed or never developed.
//
// Home-developed rolls as the trade knows them (common practice, no source): exposure off by one
// stop (standard deviation), development by 20 % of contrast, subjects that differ from frame to
// frame and from roll to roll, factory print whose exposure differs by stock and batch.
#pragma once

#include "simulator/random.h"
#include "simulator/roll_sampling.h"
#include "simulator/scenario.h"

#include <cstdint>

namespace filmsim {

struct RollFaults {
  /// Light that fell on the film over what the roll's meter meant for a usual subject, stops.
  double exposure_error_stops = 0.0;
  double contrast_index = 0.58;
  bool fogged = false;
  bool exposed = true;
  bool developed = true;
};

/// A roll of the population: stock, development and habits.
struct FaultyRoll {
  Roll roll;
  RollFaults faults;
  /// What the roll's subjects and the photographer's habits add to the placing of every frame,
  /// stops: no error.
  double habit_stops = 0.0;
};

FaultyRoll sample_faulty_roll(Random& random);

/// Draws light, habits and weather of that roll afresh; stock and development stay.
void redraw_subjects(FaultyRoll& roll, Random& random);

/// Exposure of one frame of that roll; the scene is drawn as on any roll.
FramePlan sample_faulty_frame(const FaultyRoll& roll, Random& random);

/// One strip of such a roll on a flatbed's open glass, small and quick to render.
struct FaultyScan {
  RollFaults faults;
  Scenario scenario;
};

FaultyScan sample_faulty_scan(std::uint64_t seed);

}  // namespace filmsim
