#pragma once

#include "film/film_layout.h"
#include "film/find_film.h"
#include "film/frames/frame_search.h"
#include "film/strips/film_windows.h"

#include <vector>

namespace fogline {

/// What a window may be: its format and the scale that follows.
struct FormatGuess {
  FilmFormat format = FilmFormat::unknown;
  double pixels_per_mm = 0.0;
  bool scale_known = true;
};

/// Width that film of a format shows on bare light or in a holder's window, mm.
double usual_width_mm(FilmFormat format, Surround surround);

/// Format by the window's size and the resolution tag; unknown where no tag tells the size.
FormatGuess guess_format(const FilmWindow& window, double scan_px, const FindOptions& options);

/// Frames that may stand on a strip, and how high they are, mm.
double frame_height_mm(const FilmStrip& film);
std::vector<FrameKind> frame_kinds(const FilmStrip& film, const FindOptions& options,
                                   double frame_height_mm);

}  // namespace fogline
