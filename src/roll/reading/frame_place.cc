#include "roll/reading/frame_place.h"

#include "roll/reading/place_on_scan.h"

#include <algorithm>
#include <cmath>

namespace fogline {

FrameSketch sketch_of(const DensityStrip& density, const FilmExtent& area) {
  constexpr int columns = 16;
  constexpr int rows = 12;
  FrameSketch sketch;
  for (int j = 0; j < rows; ++j) {
    for (int i = 0; i < columns; ++i) {
      const auto at = [](double begin, double end, int k, int n) {
        return begin + (end - begin) * k / n;
      };
      float sum = 0.0F;
      int count = 0;
      for (int y = density.row(at(area.across_begin_mm, area.across_end_mm, j, rows));
           y < density.row(at(area.across_begin_mm, area.across_end_mm, j + 1, rows)); ++y) {
        for (int x = density.column(at(area.along_begin_mm, area.along_end_mm, i, columns));
             x < density.column(at(area.along_begin_mm, area.along_end_mm, i + 1, columns)); ++x) {
          const float value = density.visual.at(x, y);
          if (std::isfinite(value)) {
            sum += value;
            ++count;
          }
        }
      }
      sketch.push_back(count > 0 ? sum / static_cast<float>(count) : 0.0F);
    }
  }
  return sketch;
}

FrameMeasurement frame_place(const FilmFrame& frame, const FilmMap& map, int number, int strip) {
  FrameMeasurement measured;
  measured.number = number;
  measured.strip = strip;
  measured.inferred = frame.inferred;
  measured.cut = frame.cut;
  const FilmExtent extent{frame.along_begin_mm, frame.along_end_mm, frame.across_begin_mm,
                          frame.across_end_mm};
  const std::array<PointPx, 4> corners = corners_of(extent, map);
  const auto apart = [](PointPx a, PointPx b) { return std::hypot(a.x - b.x, a.y - b.y); };
  const double width_px = 0.5 * (apart(corners[0], corners[1]) + apart(corners[3], corners[2]));
  const double height_px = 0.5 * (apart(corners[0], corners[3]) + apart(corners[1], corners[2]));
  const PointPx centre = map.scan_from_film({0.5 * (frame.along_begin_mm + frame.along_end_mm),
                                             0.5 * (frame.across_begin_mm + frame.across_end_mm)});
  measured.box_px = {centre.x - 0.5 * width_px, centre.y - 0.5 * height_px, width_px, height_px};
  measured.corners_px = corners;
  return measured;
}

}  // namespace fogline
