#pragma once

#include "film/film_layout.h"
#include "film/find_film.h"

#include <fogline/base/scan_source.h>

namespace fogline {

/// Finds how much of a perforated strip is in sight and its frames; fills `film`.
void find_frames_on_perforated(FilmStrip& film, const ScanGrid& grid, const FindOptions& options);

}  // namespace fogline
