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
#include "marks/weigh_sign.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// The rebate between holes and the film's edge, and between the holes, carries the edge print.
constexpr double print_zone_mm = film_135::row_across_mm - film_135::hole_across_mm / 2.0 - 0.3;
/// Strokes of the edge print are at least so broad (common practice, no source).
constexpr double thinnest_stroke_mm = 0.25;
/// Print stands in rows: other dense film within this of a spot makes it part of the print.
constexpr double print_neighbour_mm = 1.0;

/// Common to all spots: alone, even-edged, of no colour.
double plain_odds(const SpotShape& shape, bool picture, const SpotScore& score) {
  // In picture more is asked: pictures hold small lonely things too.
  return log_weighed(picture ? score.stands_out_in_picture : score.stands_out, shape.stands_out) +
         weighed(score.even_edge, shape.even_edge) +
         weighed_beyond(score.colour, shape.colour_spread);
}

std::optional<MarkCandidate> dust(const SpotShape& shape, const SpotGround& ground,
                                  const MarkKnowledge& knowledge) {
  const DustKnowledge& dust = knowledge.dust;
  const double pixel_mm = 1.0 / ground.pixels_per_mm;
  if (shape.contrast < dust.least_contrast || shape.diameter_mm < dust.size.least_mm ||
      shape.size_mm > dust.size.most_mm || shape.solidity < 0.88 || shape.circularity < 0.7) {
    return std::nullopt;
  }
  MarkCandidate mark;
  mark.kind = MarkKind::dust;
  // A particle is opaque: where blur doesn't eat it, it takes much.
  mark.log_odds = plain_odds(shape, ground.picture, knowledge.spot) +
                  log_weighed(dust.contrast, shape.contrast) +
                  weighed_beyond(dust.edge, shape.edge_mm - 3.0 * pixel_mm);
  if (ground.picture) {
    // Specks of a picture are no denser than the picture round about, and come in crowds.
    constexpr double most_beyond = 0.8;
    constexpr double most_crowd = 24.0;
    mark.log_odds += weighed(dust.beyond, std::min(shape.beyond, most_beyond)) +
                     log_weighed(dust.sigmas, shape.sigmas) +
                     weighed_beyond(dust.crowd, std::min<double>(shape.crowd, most_crowd));
  }
  return mark;
}

std::optional<MarkCandidate> pinhole(const SpotShape& shape, double clear_density,
                                     const MarkKnowledge& knowledge) {
  const double ground = shape.surround_density - clear_density;
  const double most_mm = knowledge.pinhole.most_mm;
  if (shape.size_mm > 1.3 * most_mm || shape.diameter_mm > most_mm || ground < 0.2 ||
      shape.circularity < 0.85 || shape.solidity < 0.8) {
    return std::nullopt;
  }
  MarkCandidate mark;
  mark.kind = MarkKind::pinhole;
  // Silver gone: the deeper towards clear film, the surer.
  const double gone = -shape.contrast / ground;
  mark.log_odds = plain_odds(shape, true, knowledge.spot) + weighed(knowledge.pinhole.gone, gone);
  return mark;
}

std::optional<MarkCandidate> bell(const SpotShape& shape, double clear_density,
                                  double pixels_per_mm, const BellKnowledge& bell) {
  const double ground = shape.surround_density - clear_density;
  const double gone = -shape.contrast / std::max(ground, 0.05);
  if (shape.diameter_mm < bell.size.least_mm || shape.diameter_mm > bell.size.most_mm ||
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
  mark.log_odds = log_weighed(bell.stands_out, shape.stands_out) +
                  weighed(bell.even_edge, shape.even_edge) +
                  std::clamp(bell.round_weight * (shape.circularity - round), -4.0, 1.0) +
                  bell.crowd_weight * std::min(shape.crowd, 6) + weighed_beyond(bell.gone, gone) +
                  weighed_beyond(bell.colour, shape.colour_spread);
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

std::optional<MarkCandidate> spot_kind(const SpotShape& shape, const SpotGround& ground,
                                       const MarkKnowledge& knowledge) {
  const bool fine = ground.pixels_per_mm >= fine_pixels_per_mm;
  if (shape.colour_spread > knowledge.spot.most_colour) {
    return std::nullopt;
  }
  std::optional<MarkCandidate> mark;
  if (shape.contrast > 0.0) {
    mark = fine ? dust(shape, ground, knowledge) : std::nullopt;
  } else if (-shape.contrast >= knowledge.bell.least_contrast) {
    mark = fine ? pinhole(shape, ground.clear_density, knowledge) : std::nullopt;
    if (!mark && (fine || shape.diameter_mm >= knowledge.bell.least_coarse_mm)) {
      mark = bell(shape, ground.clear_density, ground.pixels_per_mm, knowledge.bell);
    }
  }
  return mark;
}

std::vector<MarkCandidate> find_spots(const MarkTile& tile, const FilmStrip& film,
                                      const MarkKnowledge& knowledge) {
  const bool fine = tile.pixels_per_mm >= fine_pixels_per_mm;
  cv::Mat1b taken(tile.density.size(), static_cast<unsigned char>(0));
  std::vector<MarkCandidate> marks;
  for (const SpotPeak& peak : spot_peaks(tile, fine ? 0.0 : 0.5, knowledge.bell.size.most_mm)) {
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
        spot_kind(*shape,
                  {tile.clear_density, tile.pixels_per_mm,
                   in_picture(film, tile.film(shape->middle.x, shape->middle.y))},
                  knowledge);
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
