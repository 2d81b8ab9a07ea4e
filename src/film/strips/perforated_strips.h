#pragma once

#include "film/film_layout.h"
#include "film/strips/finding_image.h"
#include "film/strips/perforation_rows.h"

#include <vector>

namespace fogline {

/// Strips of 135 film from the perforations in sight: rows are paired at 25.37 mm between their
/// inner edges; a lone row (the other covered by a holder) takes the side where the picture lies.
/// The strips carry their map and perforations; extents and frames are still to be found.
/// Top to bottom, or left to right where the film runs vertically.
std::vector<FilmStrip> perforated_strips(const FindingImage& image);

}  // namespace fogline
