#pragma once

#include "film/film_layout.h"
#include "marks/find_marks.h"

#include <fogline/base/raster.h>

#include <optional>

#include <opencv2/core.hpp>

namespace fogline {

/// A piece of film laid straight, ready to be searched for marks.
struct MarkTile {
  FilmExtent extent;
  double pixels_per_mm = 0.0;
  double clear_density = 0.0;
  /// Visual density. Where no mark may be looked for it holds a smooth filling, so that filters
  /// don't answer to holes and edges.
  cv::Mat1f density;
  /// 255 where marks may be looked for.
  cv::Mat1b usable;
  /// Transmittance per channel as it was read, 1 or 3 channels; NaN where unknown. Empty where the
  /// tile was made for the search of large marks only.
  Raster<float> transmittance;

  [[nodiscard]] PointMm film(double x, double y) const {
    return {extent.along_begin_mm + x / pixels_per_mm, extent.across_begin_mm + y / pixels_per_mm};
  }
  [[nodiscard]] cv::Point2d pixel(PointMm at) const {
    return {(at.along_mm - extent.along_begin_mm) * pixels_per_mm,
            (at.across_mm - extent.across_begin_mm) * pixels_per_mm};
  }
};

/// Lays a piece of the strip straight in density and blocks what is no even film: perforations,
/// film edges, holder, frame borders, leaders.
MarkTile mark_tile(const FilmStrip& film, const MarkContext& context, const FilmExtent& extent,
                   double pixels_per_mm, bool keep_channels);

/// Fills what isn't `usable` with a broad average of what is.
void fill_unusable(cv::Mat1f& density, const cv::Mat1b& usable, double pixels_per_mm);

/// `usable` less what lies within so many pixels of anything unusable: for filters that look that
/// far, along and across.
cv::Mat1b inner_usable(const cv::Mat1b& usable, int along_px, int across_px);

}  // namespace fogline
