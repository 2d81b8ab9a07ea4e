#pragma once

#include "process/roll_population.h"
#include "tables/shipped_knowledge.h"

#include <fogline/process/light_and_development.h>
#include <fogline/roll/roll_measurement.h>

#include <optional>

// Rolls that were never on film: what a calibrated scan would read of them.

namespace fogline::invented {

struct RollNumbers {
  double shadow = 0.30;
  double highlight = 1.20;
  std::optional<double> edge_print;
  std::optional<double> leader;
  double base_fog = 0.28;
  int frames = 6;
  FilmFormat format = FilmFormat::f135;
};

inline Quantity read_as(double density) {
  return {density, 0.03, {}, {}, {}, false};
}

/// A strip of this roll, measured with a calibrated scanner.
inline RollMeasurement roll_of(const RollNumbers& numbers) {
  RollMeasurement roll;
  ScanMeasurement scan;
  scan.fitness = Fitness::measured;
  scan.info.bits = 16;
  scan.info.transfer.source = TransferSource::icc_profile;
  scan.pixels_per_mm = 10.0;
  scan.base_fog = BaseFog{read_as(numbers.base_fog), {}, BaseFogSource::rebate, {}};
  if (numbers.edge_print) {
    scan.edge_print = read_as(numbers.base_fog + *numbers.edge_print);
  }
  if (numbers.leader) {
    scan.leader = read_as(numbers.base_fog + *numbers.leader);
  }
  StripMeasurement strip;
  strip.number = 1;
  strip.format = numbers.format;
  strip.box_px = {0.0, 0.0, 2300.0, 350.0};
  scan.strips.push_back(strip);
  for (int i = 0; i < numbers.frames; ++i) {
    FrameMeasurement frame;
    frame.number = i + 1;
    frame.strip = 1;
    frame.tone.shadow = read_as(numbers.base_fog + numbers.shadow);
    frame.tone.highlight = read_as(numbers.base_fog + numbers.highlight);
    frame.tone.range = read_as(numbers.highlight - numbers.shadow);
    scan.frames.push_back(frame);
  }
  roll.scans.push_back(scan);
  return roll;
}

inline Aim usual_aim() {
  return {};
}

/// The same roll where a logbook knows its film's edge print to 8 %.
inline RollPopulation with_logged_print(double density) {
  RollPopulation population = shipped_knowledge().population;
  population.edge_print_density = density;
  population.edge_print_sd_share = 0.08;
  return population;
}

}  // namespace fogline::invented
