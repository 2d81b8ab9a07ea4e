#include "marks/mark_tile.h"

#include "density/density_strip.h"
#include "film/straight_strip.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// Left out round a perforation: its edge is blurred, shaded and often cracked.
constexpr double hole_margin_mm = 0.25;
/// Left out along the film's cut edges and the holder: shade, burrs, and a place known to 0.2 mm.
constexpr double edge_margin_mm = 0.35;
/// Left out on each side of a frame's border.
constexpr double frame_margin_mm = 0.2;
/// Left out round what can't be read.
constexpr double unknown_margin_mm = 0.3;
/// Density beyond which a scan rarely tells anything; nothing is looked for there.
constexpr float readable_density = 3.2F;

/// Clear film is denser than bare light by its base: this share of it is gone only where no film
/// is, over more than any scratch's breadth.
constexpr double bare_share = 0.45;
constexpr double least_step_to_bare = 0.04;
constexpr double least_bare_mm = 0.4;

cv::Rect pixels_of(const MarkTile& tile, const FilmExtent& area) {
  const cv::Point2d begin = tile.pixel({area.along_begin_mm, area.across_begin_mm});
  const cv::Point2d end = tile.pixel({area.along_end_mm, area.across_end_mm});
  const int left = static_cast<int>(std::floor(begin.x));
  const int top = static_cast<int>(std::floor(begin.y));
  const cv::Rect rect(left, top, static_cast<int>(std::ceil(end.x)) - left,
                      static_cast<int>(std::ceil(end.y)) - top);
  return rect & cv::Rect(0, 0, tile.density.cols, tile.density.rows);
}

void block(MarkTile& tile, const FilmExtent& area) {
  const cv::Rect rect = pixels_of(tile, area);
  if (rect.area() > 0) {
    tile.usable(rect).setTo(0);
  }
}

FilmExtent grown(const FilmExtent& area, double margin_mm) {
  return {area.along_begin_mm - margin_mm, area.along_end_mm + margin_mm,
          area.across_begin_mm - margin_mm, area.across_end_mm + margin_mm};
}

void block_holes(MarkTile& tile, const FilmStrip& film) {
  for (const Perforation& hole : film.perforations) {
    const double along = std::max(hole.along_mm, film_135::hole_along_mm) / 2.0;
    const double across = std::max(hole.across_mm, film_135::hole_across_mm) / 2.0;
    block(tile, grown({hole.film.along_mm - along, hole.film.along_mm + along,
                       hole.film.across_mm - across, hole.film.across_mm + across},
                      hole_margin_mm));
  }
}

void block_frame_borders(MarkTile& tile, const FilmStrip& film) {
  for (const FilmFrame& frame : film.frames) {
    const double m = frame_margin_mm;
    const FilmExtent area{frame.along_begin_mm, frame.along_end_mm, frame.across_begin_mm,
                          frame.across_end_mm};
    const FilmExtent out = grown(area, m);
    block(tile,
          {out.along_begin_mm, area.along_begin_mm + m, out.across_begin_mm, out.across_end_mm});
    block(tile, {area.along_end_mm - m, out.along_end_mm, out.across_begin_mm, out.across_end_mm});
    block(tile,
          {out.along_begin_mm, out.along_end_mm, out.across_begin_mm, area.across_begin_mm + m});
    block(tile, {out.along_begin_mm, out.along_end_mm, area.across_end_mm - m, out.across_end_mm});
  }
}

void block_outside(MarkTile& tile, const FilmStrip& film) {
  const FilmExtent all = tile.extent;
  constexpr double m = edge_margin_mm;
  block(tile,
        {all.along_begin_mm, film.along_begin_mm + m, all.across_begin_mm, all.across_end_mm});
  block(tile, {film.along_end_mm - m, all.along_end_mm, all.across_begin_mm, all.across_end_mm});
  block(tile,
        {all.along_begin_mm, all.along_end_mm, all.across_begin_mm, film.across_begin_mm + m});
  block(tile, {all.along_begin_mm, all.along_end_mm, film.across_end_mm - m, all.across_end_mm});
  for (const FilmExtent& leader : film.leaders) {
    block(tile, grown(leader, 1.0));
  }
}

/// Blocks what is so much thinner than clear film that it can only be bare light: holes that the
/// layout doesn't hold, film that ends early.
void block_bare_light(MarkTile& tile) {
  const double limit =
      tile.clear_density - std::max(least_step_to_bare, bare_share * tile.clear_density);
  const cv::Mat1b bare(tile.density < limit);
  const int across = std::max(1, static_cast<int>(least_bare_mm * tile.pixels_per_mm));
  cv::Mat1b large;
  cv::morphologyEx(bare, large, cv::MORPH_OPEN,
                   cv::getStructuringElement(cv::MORPH_RECT, {across, across}));
  const int margin = static_cast<int>(std::lround(hole_margin_mm * tile.pixels_per_mm));
  cv::dilate(large, large,
             cv::getStructuringElement(cv::MORPH_RECT, {2 * margin + 1, 2 * margin + 1}));
  tile.usable.setTo(0, large);
}

/// Copies densities; what can't be read becomes unusable, and so does what lies near a large
/// unreadable area. A single opaque particle stays usable: it is what is looked for.
void take_density(MarkTile& tile, const Raster<float>& visual) {
  tile.density.create(visual.height(), visual.width());
  tile.usable = cv::Mat1b(visual.height(), visual.width(), static_cast<unsigned char>(255));
  cv::Mat1b unknown(visual.height(), visual.width(), static_cast<unsigned char>(0));
  for (int y = 0; y < visual.height(); ++y) {
    for (int x = 0; x < visual.width(); ++x) {
      const float density = visual.at(x, y);
      if (std::isnan(density)) {
        unknown(y, x) = 255;
      } else if (!(density < readable_density)) {
        unknown(y, x) = 128;
      }
      tile.density(y, x) = std::isnan(density) ? 0.0F : std::min(density, readable_density);
    }
  }
  const int margin =
      std::max(1, static_cast<int>(std::lround(unknown_margin_mm * tile.pixels_per_mm)));
  const cv::Mat kernel =
      cv::getStructuringElement(cv::MORPH_RECT, {2 * margin + 1, 2 * margin + 1});
  // Opening with the margin keeps only unreadable areas larger than any particle.
  cv::Mat1b large;
  cv::morphologyEx(unknown, large, cv::MORPH_OPEN, kernel);
  cv::max(large, unknown == 255, large);
  cv::dilate(large, large, kernel);
  tile.usable.setTo(0, large);
}

/// A Gaussian blur; of broad ones only every few cells are worked out.
cv::Mat1f broad_blur(const cv::Mat1f& image, double sd_px) {
  // So wide in its own cells, a Gaussian's weights sum as its integral does.
  constexpr double fine_sd_px = 5.0;
  const double shrink = std::max(1.0, std::floor(sd_px / fine_sd_px));
  const cv::Size small(std::max(1, static_cast<int>(image.cols / shrink)),
                       std::max(1, static_cast<int>(image.rows / shrink)));
  cv::Mat1f blurred;
  cv::resize(image, blurred, small, 0, 0, cv::INTER_AREA);
  cv::GaussianBlur(blurred, blurred, {}, sd_px / shrink);
  cv::resize(blurred, blurred, image.size(), 0, 0, cv::INTER_LINEAR);
  return blurred;
}

}  // namespace

void fill_unusable(cv::Mat1f& density, const cv::Mat1b& usable, double pixels_per_mm) {
  // Broad averages need few pixels.
  constexpr double cell_mm = 0.2;
  const double shrink = std::max(1.0, cell_mm * pixels_per_mm);
  const cv::Size small(std::max(1, static_cast<int>(density.cols / shrink)),
                       std::max(1, static_cast<int>(density.rows / shrink)));
  cv::Mat1f weight;
  usable.convertTo(weight, CV_32F, 1.0 / 255.0);
  cv::Mat1f sum(density.mul(weight));
  cv::resize(sum, sum, small, 0, 0, cv::INTER_AREA);
  cv::resize(weight, weight, small, 0, 0, cv::INTER_AREA);
  cv::Mat1f filled(small, 0.0F);
  cv::Mat1b known(small, static_cast<unsigned char>(0));
  for (const double sd_mm : {0.3, 1.0, 4.0, 16.0}) {
    const cv::Mat1f wide_sum = broad_blur(sum, sd_mm / cell_mm);
    const cv::Mat1f wide_weight = broad_blur(weight, sd_mm / cell_mm);
    constexpr float enough = 0.02F;
    const cv::Mat1b now((wide_weight > enough) & (known == 0));
    const cv::Mat1f mean(wide_sum / cv::max(wide_weight, enough));
    mean.copyTo(filled, now);
    known |= now;
  }
  cv::Mat1f full;
  cv::resize(filled, full, density.size(), 0, 0, cv::INTER_LINEAR);
  full.copyTo(density, usable == 0);
}

cv::Mat1b inner_usable(const cv::Mat1b& usable, int along_px, int across_px) {
  cv::Mat1b inner;
  cv::erode(usable, inner,
            cv::getStructuringElement(cv::MORPH_RECT, {2 * along_px + 1, 2 * across_px + 1}));
  return inner;
}

MarkTile mark_tile(const FilmStrip& film, const MarkContext& context, const FilmExtent& extent,
                   double pixels_per_mm, bool keep_channels) {
  MarkTile tile;
  {
    StraightStrip straight = straighten(context.grid, film.map, extent, pixels_per_mm);
    mask_outside(straight, film.map, film.window, edge_margin_mm);
    const Raster<float> visual = visual_density_of(straight, film.map, context.stray, context.lamp);
    tile.extent = extent;
    tile.pixels_per_mm = pixels_per_mm;
    tile.clear_density = context.clear_density;
    take_density(tile, visual);
    if (keep_channels) {
      tile.transmittance = std::move(straight.light);
    }
  }
  block_bare_light(tile);
  block_holes(tile, film);
  block_frame_borders(tile, film);
  block_outside(tile, film);
  fill_unusable(tile.density, tile.usable, pixels_per_mm);
  return tile;
}

}  // namespace fogline
