// Evidence for frames as film without grain and dirt would give it, column by column.
#pragma once

#include "film/frames/frame_profile.h"

#include <cmath>
#include <utility>
#include <vector>

namespace fogline::drawn {

/// Where pictures begin and end along the film, mm. May reach beyond the film.
using Spans = std::vector<std::pair<double, double>>;

/// Film from `begin_mm` to `end_mm`, picture in the spans, clear elsewhere, every border seen over
/// its whole height.
inline FrameProfile profile_of(const Spans& spans, double begin_mm, double end_mm,
                               double pixels_per_mm = 10.0) {
  constexpr double likely = 2.0;
  constexpr double step = 0.4;
  const auto columns = static_cast<std::size_t>(std::lround((end_mm - begin_mm) * pixels_per_mm));
  FrameProfile profile;
  profile.pixels_per_mm = pixels_per_mm;
  profile.along_begin_mm = begin_mm;
  profile.picture.assign(columns, -likely);
  profile.rises.assign(columns, 0.0);
  profile.falls.assign(columns, 0.0);
  profile.step.assign(columns, 0.0);
  profile.film.assign(columns, true);
  for (const auto& [begin, end] : spans) {
    for (std::size_t i = 0; i < columns; ++i) {
      const double middle = begin_mm + (static_cast<double>(i) + 0.5) / pixels_per_mm;
      const double left = begin_mm + static_cast<double>(i) / pixels_per_mm;
      if (middle > begin && middle < end) {
        profile.picture[i] = likely;
      }
      // A border lies at the left side of its column.
      if (std::abs(left - begin) < 0.5 / pixels_per_mm) {
        profile.rises[i] = 1.0;
        profile.step[i] = step;
      }
      if (std::abs(left - end) < 0.5 / pixels_per_mm) {
        profile.falls[i] = 1.0;
        profile.step[i] = -step;
      }
    }
  }
  return profile;
}

}  // namespace fogline::drawn
