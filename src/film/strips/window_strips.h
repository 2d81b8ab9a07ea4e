#pragma once

#include "film/film_layout.h"
#include "film/find_film.h"
#include "film/strips/finding_image.h"

#include <fogline/base/scan_source.h>

#include <vector>

namespace fogline {

/// Film without perforations in sight: 120 and sheet film, 135 film in a holder that covers its
/// holes. The scale comes from the resolution tag or from the known width of the film; format from
/// the width. On bare light only pieces of a known width are called film of a format; others are
/// strips of unknown format without frames.
std::vector<FilmStrip> window_strips(const FindingImage& image, const ScanGrid& grid,
                                     const FindOptions& options);

}  // namespace fogline
