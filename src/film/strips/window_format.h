#pragma once

#include "film/film_layout.h"
#include "film/find_film.h"
#include "film/frames/frame_search.h"
#include "film/strips/film_windows.h"

#include <optional>
#include <vector>

namespace fogline {

/// What a window may be: its format and the scale that follows.
struct FormatGuess {
  FilmFormat format = FilmFormat::unknown;
  double pixels_per_mm = 0.0;
  bool scale_known = true;
};

/// Width of the sheet film whose length is so many times its width; absent where none is.
std::optional<double> sheet_width_mm(double aspect);

/// Width that film of a format shows on bare light or in a holder's window, mm.
double usual_width_mm(FilmFormat format, Surround surround);

/// Format by the window's size and the resolution tag; unknown where no tag tells the size. A tag
/// that makes a width of it that no film has is wrong, and the scale isn't known.
FormatGuess guess_format(const FilmWindow& window, double scan_px, const FindOptions& options);

/// Frames that may stand on a strip, and how high they are, mm.
double frame_height_mm(const FilmStrip& film);
std::vector<FrameKind> frame_kinds(const FilmStrip& film, const FindOptions& options,
                                   double frame_height_mm);

}  // namespace fogline
