#pragma once

#include "film/film_layout.h"
#include "roll/reading/strip_reading.h"

#include <fogline/roll/roll_measurement.h>

#include <vector>

namespace fogline {

/// A rectangle of the film as a closed outline in the scan. Long sides get extra points, so that a
/// bowed strip's outline follows it.
Outline outline_of(const FilmMap& map, const FilmExtent& area, OutlineKind kind, int strip,
                   int number, bool partial);

/// Everything that was found and read on one strip; `first_frame` is the number of its first frame.
std::vector<Outline> strip_outlines(const FilmStrip& film, const StripReading& reading,
                                    int strip_number, int first_frame);

}  // namespace fogline
