// Spots: dust (denser, sharp), pinholes (down to clear film, small), air bells (thinner discs).
//
// A negative's picture has dark and bright things of every size too. What parts a mark from them:
// it stands alone on something even (its contrast is many times the spread of its surround), its
// edge is as sharp as the scan allows all the way round, it takes the same from every channel, a
// bell is a disc, and a pinhole goes down to clear film. Recall is given up for this: a particle
// on a busy part of the picture isn't told.

#include "marks/find_spots.h"

#include "marks/neighbourhood.h"
#include "marks/spot_peaks.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// Sizes of the kinds, mm: dust 0.02 to 0.5, pinholes 0.02 to 0.3, air bells 0.3 to 3 (common
/// practice, no source). The ends are where each is still told from the others.
constexpr double least_dust_mm = 0.05;
constexpr double most_dust_mm = 0.6;
constexpr double most_pinhole_mm = 0.28;
constexpr double least_bell_mm = 0.28;
constexpr double most_bell_mm = 3.2;
/// On scans too coarse for an outline of ten pixels.
constexpr double least_coarse_bell_mm = 0.8;
/// An opaque particle of a pixel's size still takes this much; less is grain.
constexpr double least_dust_contrast = 0.12;
constexpr double least_thin_contrast = 0.05;
/// Contrast between channels that a neutral mark may show (colour fringes, noise), as a share.
constexpr double most_colour = 0.35;

/// The rebate between holes and the film's edge, and between the holes, carries the edge print.
constexpr double print_zone_mm = film_135::row_across_mm - film_135::hole_across_mm / 2.0 - 0.3;
/// Strokes of the edge print are at least so broad (common practice, no source).
constexpr double thinnest_stroke_mm = 0.25;
/// Print stands in rows: other dense film within this of a spot makes it part of the print.
constexpr double print_neighbour_mm = 1.0;

double logit_step(double value, double middle, double steepness) {
  return steepness * std::log(std::max(value, 1e-6) / middle);
}

/// Common to all spots: alone, even-edged, of no colour.
double plain_odds(const SpotShape& shape, bool picture) {
  // In picture more is asked: pictures hold small lonely things too.
  return logit_step(shape.stands_out, picture ? 10.0 : 6.0, 3.0) + 6.0 * (shape.even_edge - 0.85) -
         4.0 * std::max(0.0, shape.colour_spread - 0.15);
}

std::optional<MarkCandidate> dust(const SpotShape& shape, const SpotGround& ground) {
  const double pixel_mm = 1.0 / ground.pixels_per_mm;
  if (shape.contrast < least_dust_contrast || shape.diameter_mm < least_dust_mm ||
      shape.size_mm > most_dust_mm || shape.solidity < 0.88 || shape.circularity < 0.7) {
    return std::nullopt;
  }
  MarkCandidate mark;
  mark.kind = MarkKind::dust;
  // A particle is opaque: where blur doesn't eat it, it takes much.
  mark.log_odds = plain_odds(shape, ground.picture) + logit_step(shape.contrast, 0.3, 1.5) -
                  std::max(0.0, (shape.edge_mm - 3.0 * pixel_mm) / 0.05);
  if (ground.picture) {
    // Specks of a picture are no denser than the picture round about, and come in crowds.
    mark.log_odds += 8.0 * (std::min(shape.beyond, 0.8) - 0.6) +
                     logit_step(shape.sigmas, 12.0, 1.5) -
                     0.25 * std::clamp(shape.crowd - 4, 0, 20);
  }
  return mark;
}

std::optional<MarkCandidate> pinhole(const SpotShape& shape, double clear_density) {
  const double ground = shape.surround_density - clear_density;
  if (shape.size_mm > 1.3 * most_pinhole_mm || shape.diameter_mm > most_pinhole_mm ||
      ground < 0.2 || shape.circularity < 0.85 || shape.solidity < 0.8) {
    return std::nullopt;
  }
  MarkCandidate mark;
  mark.kind = MarkKind::pinhole;
  // Silver gone: the deeper towards clear film, the surer.
  const double gone = -shape.contrast / ground;
  mark.log_odds = plain_odds(shape, true) + 8.0 * (gone - 0.55);
  return mark;
}

std::optional<MarkCandidate> bell(const SpotShape& shape, double clear_density,
                                  double pixels_per_mm) {
  const double ground = shape.surround_density - clear_density;
  const double gone = -shape.contrast / std::max(ground, 0.05);
  if (shape.diameter_mm < least_bell_mm || shape.diameter_mm > most_bell_mm ||
      shape.circularity < 0.97 || shape.solidity < 0.9 || gone < 0.1 || gone > 1.15) {
    return std::nullopt;
  }
  MarkCandidate mark;
  mark.kind = MarkKind::air_bell;
  // Whole pixels make the outline of a small disc uneven.
  const double diameter_px = shape.diameter_mm * pixels_per_mm;
  const double round = 0.996 - 0.4 / (diameter_px * diameter_px);
  // A bell is a disc to within its pixels; leaves and windows of that size nearly are. What has
  // gone nearly to clear film, and stands among its like, is one of those.
  mark.log_odds = logit_step(shape.stands_out, 6.0, 3.0) + 6.0 * (shape.even_edge - 0.95) +
                  std::clamp(250.0 * (shape.circularity - round), -4.0, 1.0) -
                  0.35 * std::min(shape.crowd, 6) - 8.0 * std::max(0.0, gone - 0.75) -
                  4.0 * std::max(0.0, shape.colour_spread - 0.25);
  return mark;
}

/// True where a spot may be a stroke or dot of the edge print.
bool may_be_print(const MarkTile& tile, const FilmStrip& film, const SpotShape& shape) {
  if (film.format != FilmFormat::f135) {
    return false;
  }
  const PointMm at = tile.film(shape.middle.x, shape.middle.y);
  if (std::abs(at.across_mm) < print_zone_mm) {
    return false;
  }
  // The gaps between its bars are thin spots on a dense ground.
  if (shape.size_mm > thinnest_stroke_mm || shape.contrast < 0.0) {
    return true;
  }
  const int reach = static_cast<int>(print_neighbour_mm * tile.pixels_per_mm);
  const cv::Rect near =
      cv::Rect(static_cast<int>(shape.middle.x) - reach, static_cast<int>(shape.middle.y) - reach,
               2 * reach + 1, 2 * reach + 1) &
      cv::Rect(0, 0, tile.density.cols, tile.density.rows);
  const double level = shape.surround_density + 0.3 * shape.contrast;
  const int dense = cv::countNonZero((tile.density(near) > level) & (tile.usable(near) != 0));
  const double own = shape.area_mm2 * tile.pixels_per_mm * tile.pixels_per_mm;
  // Its own soft edge, and no other of half its size.
  return dense > 1.8 * own + 4.0;
}

}  // namespace

std::optional<MarkCandidate> spot_kind(const SpotShape& shape, const SpotGround& ground) {
  const bool fine = ground.pixels_per_mm >= fine_pixels_per_mm;
  if (shape.colour_spread > most_colour) {
    return std::nullopt;
  }
  std::optional<MarkCandidate> mark;
  if (shape.contrast > 0.0) {
    mark = fine ? dust(shape, ground) : std::nullopt;
  } else if (-shape.contrast >= least_thin_contrast) {
    mark = fine ? pinhole(shape, ground.clear_density) : std::nullopt;
    if (!mark && (fine || shape.diameter_mm >= least_coarse_bell_mm)) {
      mark = bell(shape, ground.clear_density, ground.pixels_per_mm);
    }
  }
  return mark;
}

std::vector<MarkCandidate> find_spots(const MarkTile& tile, const FilmStrip& film) {
  const bool fine = tile.pixels_per_mm >= fine_pixels_per_mm;
  cv::Mat1b taken(tile.density.size(), static_cast<unsigned char>(0));
  std::vector<MarkCandidate> marks;
  for (const SpotPeak& peak : spot_peaks(tile, fine ? 0.0 : 0.5, most_bell_mm)) {
    const int px = std::clamp(static_cast<int>(peak.at.x), 0, taken.cols - 1);
    const int py = std::clamp(static_cast<int>(peak.at.y), 0, taken.rows - 1);
    if (taken(py, px) != 0) {
      continue;
    }
    const std::optional<SpotShape> shape = spot_shape(tile, peak);
    if (!shape || may_be_print(tile, film, *shape)) {
      continue;
    }
    std::optional<MarkCandidate> mark =
        spot_kind(*shape, {tile.clear_density, tile.pixels_per_mm,
                           in_picture(film, tile.film(shape->middle.x, shape->middle.y))});
    if (!mark) {
      continue;
    }
    taken(shape->box & cv::Rect(0, 0, taken.cols, taken.rows)).setTo(1);
    mark->middle = tile.film(shape->middle.x, shape->middle.y);
    const PointMm begin = tile.film(shape->box.x, shape->box.y);
    const PointMm end = tile.film(shape->box.br().x, shape->box.br().y);
    mark->extent = {begin.along_mm, end.along_mm, begin.across_mm, end.across_mm};
    mark->size_mm = shape->size_mm;
    mark->area_mm2 = shape->area_mm2;
    mark->contrast_density = shape->contrast;
    marks.push_back(*mark);
  }
  return marks;
}

}  // namespace fogline
