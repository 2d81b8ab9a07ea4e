#pragma once

#include "roll/reading/strip_reading.h"

#include <fogline/film/film_layout.h>
#include <fogline/roll/roll_measurement.h>

#include <vector>

namespace fogline {

/// Decides what a scan is fit for and writes the cautions that say why and how to scan again.
/// `scan.info` must be set; `clipped_pixels_share` is the share of the whole scan at the top code;
/// fills `fitness`, `densities_above`, `cautions`.
void judge_fitness(ScanMeasurement& scan, const FilmLayout& layout,
                   const std::vector<StripReading>& readings, double clipped_pixels_share,
                   const DeviceKnowledge& devices);

/// Adds a caution, once of each kind.
void add_caution(ScanMeasurement& scan, const Caution& caution);

}  // namespace fogline
