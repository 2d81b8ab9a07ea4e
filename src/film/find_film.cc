#include "film/find_film.h"

#include "film/frames/strip_frames.h"
#include "film/strips/finding_image.h"
#include "film/strips/perforated_strips.h"
#include "film/strips/window_strips.h"

#include <algorithm>
#include <utility>

namespace fogline {

namespace {

/// Perforations of a strip 240 mm long are still 20 pixels long on a picture of this size.
constexpr std::int64_t finding_pixels = 2'500'000;
/// With so many perforations found there is no question of an inverted scan.
constexpr std::size_t sure_holes = 12;

/// Film is perforated from end to end: rows of windows in a picture are not.
constexpr double least_perforated_share = 0.55;

/// Fog and surge may spoil the rebate over long stretches, seldom over more than this leaves.
constexpr double least_clear_rebate = 0.3;

/// Share of the strip's length in sight along which perforations were seen, in its better row.
double perforated_share(const FilmStrip& strip) {
  const double places = (strip.along_end_mm - strip.along_begin_mm) / film_135::pitch_mm;
  double better = 0.0;
  for (const int row : {-1, +1}) {
    const auto seen = std::count_if(strip.perforations.begin(), strip.perforations.end(),
                                    [&](const Perforation& hole) { return hole.row == row; });
    better = std::max(better, static_cast<double>(seen) / std::max(1.0, places - 1.0));
  }
  return better;
}

std::size_t holes_of(const std::vector<FilmStrip>& strips) {
  std::size_t count = 0;
  for (const FilmStrip& strip : strips) {
    count += strip.perforations.size();
  }
  return count;
}

/// Strips in the colour of light that shows most holes; those seen in visual light unless another
/// shows more.
std::vector<FilmStrip> strips_in_any_colour(const ScanGrid& grid, std::vector<FilmStrip> visual) {
  std::vector<FilmStrip> best = std::move(visual);
  if (grid.light.channels() == 1) {
    return best;
  }
  for (const FindingLight colour : {FindingLight::red, FindingLight::green, FindingLight::blue}) {
    std::vector<FilmStrip> strips = perforated_strips(finding_image(grid, finding_pixels, colour));
    if (holes_of(strips) > holes_of(best)) {
      best = std::move(strips);
    }
  }
  return best;
}

}  // namespace

FilmLayout find_film(const ScanGrid& grid, const FindOptions& options) {
  FilmLayout layout;
  const FindingImage image = finding_image(grid, finding_pixels, FindingLight::visual);
  layout.strips = perforated_strips(image);
  if (holes_of(layout.strips) < sure_holes) {
    layout.strips = strips_in_any_colour(grid, std::move(layout.strips));
  }
  if (holes_of(layout.strips) < sure_holes) {
    const FindingImage turned = finding_image(grid, finding_pixels, FindingLight::turned_over);
    const std::vector<FilmStrip> turned_strips = perforated_strips(turned);
    if (holes_of(turned_strips) > 2 * holes_of(layout.strips)) {
      layout.polarity = Polarity::inverted;
      layout.strips = turned_strips;
      return layout;
    }
  }
  for (FilmStrip& strip : layout.strips) {
    find_frames_on_perforated(strip, grid, options);
  }
  std::erase_if(layout.strips, [](const FilmStrip& strip) {
    return perforated_share(strip) < least_perforated_share ||
           strip.clear_rebate_share < least_clear_rebate;
  });
  if (layout.strips.empty()) {
    layout.strips = window_strips(image, grid, options);
  }
  if (!layout.strips.empty()) {
    layout.polarity = Polarity::negative;
    if (layout.strips.front().scale_known) {
      layout.pixels_per_mm = layout.strips.front().map.pixels_per_mm();
    }
  }
  return layout;
}

}  // namespace fogline
