#include "film/finding_image.h"
#include "film/perforated_strips.h"
#include "film/strip_frames.h"
#include "film/window_strips.h"

#include <fogline/film/find_film.h>

namespace fogline {

namespace {

/// Perforations of a strip 240 mm long are still 20 pixels long on a picture of this size.
constexpr std::int64_t finding_pixels = 2'500'000;

}  // namespace

FilmLayout find_film(const ScanGrid& grid, const FindOptions& options) {
  FilmLayout layout;
  const FindingImage image = finding_image(grid, finding_pixels, false);
  layout.strips = perforated_strips(image);
  for (FilmStrip& strip : layout.strips) {
    find_frames_on_perforated(strip, grid, options);
  }
  if (layout.strips.empty()) {
    layout.strips = window_strips(image, grid, options);
  }
  if (!layout.strips.empty()) {
    layout.polarity = Polarity::negative;
    layout.pixels_per_mm = layout.strips.front().map.pixels_per_mm();
  }
  return layout;
}

}  // namespace fogline
