#include "marks/neighbourhood.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace fogline {

namespace {

/// A frame's border is known about so well.
constexpr double border_doubt_mm = 0.5;
/// Half of a picture's width on 135 film, with the play of gates.
constexpr double half_picture_mm = film_135::frame_across_mm / 2.0 + 0.6;
constexpr double outermost = 0.05;

}  // namespace

DensityRange range_round(const MarkTile& tile, const cv::Rect& box, double reach_mm) {
  const int reach = static_cast<int>(reach_mm * tile.pixels_per_mm);
  const cv::Rect window = (box + cv::Size(2 * reach, 2 * reach) - cv::Point(reach, reach)) &
                          cv::Rect(0, 0, tile.density.cols, tile.density.rows);
  // Some thousand samples tell a range.
  const int step = std::max(1, static_cast<int>(std::sqrt(window.area() / 3000.0)));
  std::vector<float> values;
  for (int y = window.y; y < window.br().y; y += step) {
    for (int x = window.x; x < window.br().x; x += step) {
      if (tile.usable(y, x) != 0 && !box.contains({x, y})) {
        values.push_back(tile.density(y, x));
      }
    }
  }
  if (values.empty()) {
    return {};
  }
  const auto rank = [&](double share) {
    const auto at = static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1));
    std::nth_element(values.begin(), values.begin() + at, values.end());
    return static_cast<double>(values[static_cast<std::size_t>(at)]);
  };
  return {rank(outermost), rank(1.0 - outermost)};
}

double beyond_range(const DensityRange& range, double core_density, double contrast) {
  return contrast > 0.0 ? (core_density - range.high) / contrast
                        : (range.low - core_density) / -contrast;
}

bool in_picture(const FilmStrip& film, PointMm at) {
  if (film.format == FilmFormat::f135 && std::abs(at.across_mm) > half_picture_mm) {
    return false;
  }
  const bool in_frame =
      std::any_of(film.frames.begin(), film.frames.end(), [&](const FilmFrame& frame) {
        return at.along_mm > frame.along_begin_mm - border_doubt_mm &&
               at.along_mm < frame.along_end_mm + border_doubt_mm &&
               at.across_mm > frame.across_begin_mm - border_doubt_mm &&
               at.across_mm < frame.across_end_mm + border_doubt_mm;
      });
  // Between two frames, and only there, is film surely unexposed.
  const bool before = std::any_of(film.frames.begin(), film.frames.end(), [&](const auto& frame) {
    return frame.along_end_mm < at.along_mm;
  });
  const bool behind = std::any_of(film.frames.begin(), film.frames.end(), [&](const auto& frame) {
    return frame.along_begin_mm > at.along_mm;
  });
  return in_frame || !before || !behind;
}

}  // namespace fogline
