#include "roll/reading/scan_marks.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

namespace fogline {

namespace {

/// A mark of more than this covers picture, mm2.
constexpr double small_mark_mm2 = 4.0;

/// Makes small marks of strip `number` unknown in its densities.
void leave_out_marks(DensityStrip& density, int number, const std::vector<Mark>& marks,
                     const FilmMap& map) {
  for (const Mark& mark : marks) {
    if (mark.strip != number || mark.area_mm2.value_or(INFINITY) > small_mark_mm2) {
      continue;
    }
    double begin_along = INFINITY;
    double end_along = -std::numeric_limits<double>::infinity();
    double begin_across = INFINITY;
    double end_across = -std::numeric_limits<double>::infinity();
    for (const double x : {mark.box_px.x, mark.box_px.x + mark.box_px.width}) {
      for (const double y : {mark.box_px.y, mark.box_px.y + mark.box_px.height}) {
        const PointMm at = map.film_from_scan({x, y});
        begin_along = std::min(begin_along, at.along_mm);
        end_along = std::max(end_along, at.along_mm);
        begin_across = std::min(begin_across, at.across_mm);
        end_across = std::max(end_across, at.across_mm);
      }
    }
    const int left = std::clamp(density.column(begin_along), 0, density.visual.width());
    const int right = std::clamp(density.column(end_along) + 1, left, density.visual.width());
    const int top = std::clamp(density.row(begin_across), 0, density.visual.height());
    const int bottom = std::clamp(density.row(end_across) + 1, top, density.visual.height());
    for (int y = top; y < bottom; ++y) {
      for (int x = left; x < right; ++x) {
        density.visual.at(x, y) = std::numeric_limits<float>::quiet_NaN();
      }
    }
  }
}

}  // namespace

MarkSearch scan_marks(const ScanGrid& grid, const FilmLayout& layout, const StrayLight& stray,
                      const std::vector<StripReading>& readings, const MarkKnowledge& knowledge) {
  MarkSearch all;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const StripReading& reading = readings[i];
    if (reading.lamp.empty() || !reading.clear || !layout.strips[i].scale_known) {
      continue;
    }
    const MarkSearch strip =
        find_marks(layout.strips[i], static_cast<int>(i) + 1,
                   {grid, stray, reading.lamp, reading.clear->visual, knowledge});
    std::copy_if(strip.marks.begin(), strip.marks.end(), std::back_inserter(all.marks),
                 [&](const Mark& mark) { return mark.confidence >= knowledge.told_from; });
    if (!all.limits) {
      all.limits = strip.limits;
    }
  }
  return all;
}

std::vector<StripReading> without_marks(std::vector<StripReading> readings,
                                        const FilmLayout& layout, const std::vector<Mark>& marks) {
  for (std::size_t i = 0; i < readings.size(); ++i) {
    leave_out_marks(readings[i].density, static_cast<int>(i) + 1, marks, layout.strips[i].map);
  }
  return readings;
}

}  // namespace fogline
