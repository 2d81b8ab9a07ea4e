#pragma once

#include "roll/reading/exposed_reading.h"
#include "roll/reading/strip_reading.h"

#include <fogline/roll/exposure_target.h>

#include <vector>

namespace fogline {

/// Reads what a target needs of one scan that tells densities: frames' middles, steps of a wedge
/// printed on the film, marked areas, and the doubts that net densities share. Throws FileError
/// where a marked area isn't film.
ScanExposures read_exposures(const ScanInfo& info, const FilmLayout& layout,
                             const std::vector<StripReading>& readings,
                             const ExposureTarget& target);

}  // namespace fogline
