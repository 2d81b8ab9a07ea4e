#pragma once

#include "process/roll_population.h"

#include <fogline/process/roll_card.h>
#include <fogline/roll/roll_measurement.h>

#include <optional>

namespace fogline {

/// A net density of the roll, or a lower bound of it.
struct NetReading {
  double density = 0.0;
  bool at_least = false;
  /// What stray light leaves in doubt of it (standard uncertainty): little up to the scan's density
  /// limit, tenfold with each unit of density.
  double stray_sd = 0.0;
};

/// What the roll's scans show of light and time, gathered over all of them. Net densities are above
/// base plus fog, in the scanner's own light.
struct LightSigns {
  /// Frames that count: whole ones that aren't repeated or inferred, cut ones only where none is
  /// whole.
  int frames = 0;
  /// Medians over those frames of the 2nd and the 98th percentile.
  std::optional<NetReading> shadow;
  std::optional<NetReading> highlight;
  std::optional<NetReading> edge_print;
  std::optional<NetReading> leader;
  /// Base plus fog above the bare light.
  std::optional<Quantity> base_fog;
  FilmFormat format = FilmFormat::unknown;
  /// Densities can be read from at least one scan.
  bool readable = false;
  bool sixteen_bits = false;
  /// Calibrated against known densities.
  bool calibrated = false;
  /// Length of film in sight, mm, and all frames seen on it, counted ones or not.
  double film_mm = 0.0;
  int frames_in_sight = 0;
};

LightSigns gather_light_signs(const RollMeasurement& roll);

/// Factor by which the scanner reads net densities higher than diffuse light would, and its doubt:
/// angle of light and tone curve, common to all densities of the roll.
struct ReadingScale {
  double factor = 1.0;
  double sd_share = 0.0;
};

ReadingScale reading_scale(const RollMeasurement& roll, const RollPopulation& population);

}  // namespace fogline
