#pragma once

#include "film/film_layout.h"

#include <fogline/base/scan_source.h>

#include <optional>

namespace fogline {

/// What is known before the film is looked for.
struct FindOptions {
  /// Absent: told from the picture.
  std::optional<FilmFormat> format;
  /// Length of a frame along the film, mm. Absent: told from the picture.
  std::optional<double> frame_mm;
  std::optional<double> tag_pixels_per_mm;
};

/// Finds film, perforations and frames on the logarithm of light, coarse to fine:
/// perforations as bright rounded rectangles in rows of equal pitch (4.750 mm, which also gives the
/// scale); strips as pairs of rows; film without visible perforations as a window in an opaque
/// holder or a darker rectangle on bare light; frames by their straight borders against clear film,
/// with a frame length common to the roll. A scan that holds no film gives an empty layout.
/// Works under any monotone reading of the codes: the tone curve needn't be known.
FilmLayout find_film(const ScanGrid& grid, const FindOptions& options);

}  // namespace fogline
