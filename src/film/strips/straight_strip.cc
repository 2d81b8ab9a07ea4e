#include "film/straight_strip.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

namespace fogline {

namespace {

/// Most samples a strip pixel, each way: finer scans are thinned, the noise average is enough.
constexpr int most_samples = 5;

/// The map is nearly straight: between nodes so many samples apart it is taken for straight, wrong
/// by less than 0.01 stored pixel (lens distortion of some 100 pixels over the picture).
constexpr int node_samples = 16;

/// Film that a scale makes huge is laid straight coarser: no more pixels than a few strips of 135
/// film have.
constexpr double most_pixels = 4e6;

/// Places in the grid, in grid pixels, of one row of samples along the film.
struct RowOfPlaces {
  std::vector<double> x;
  std::vector<double> y;
};

void place_row(RowOfPlaces& row, const FilmMap& map, int reduction, double begin_mm,
               double across_mm, double step_mm) {
  const std::size_t count = row.x.size();
  const auto node = [&](std::size_t i) {
    const PointPx at =
        map.scan_from_film({begin_mm + (static_cast<double>(i) + 0.5) * step_mm, across_mm});
    return PointPx{at.x / reduction, at.y / reduction};
  };
  PointPx from = node(0);
  for (std::size_t begin = 0; begin < count; begin += node_samples) {
    const PointPx to = node(begin + node_samples);
    const double dx = (to.x - from.x) / node_samples;
    const double dy = (to.y - from.y) / node_samples;
    const std::size_t end = std::min(count, begin + node_samples);
    for (std::size_t i = begin; i < end; ++i) {
      row.x[i] = from.x + static_cast<double>(i - begin) * dx;
      row.y[i] = from.y + static_cast<double>(i - begin) * dy;
    }
    from = to;
  }
}

/// Bilinear light at a place of the grid, in grid pixels; false outside.
bool sample_light(const LightRaster& light, double gx, double gy, PerChannel<float>& sum) {
  const double x = gx - 0.5;
  const double y = gy - 0.5;
  constexpr double half = 0.5;
  if (x < -half || y < -half || x > light.width() - half || y > light.height() - half) {
    return false;
  }
  const double inside_x = std::clamp(x, 0.0, light.width() - 1.0);
  const double inside_y = std::clamp(y, 0.0, light.height() - 1.0);
  const int x0 = static_cast<int>(inside_x);
  const int y0 = static_cast<int>(inside_y);
  const int x1 = std::min(x0 + 1, light.width() - 1);
  const int y1 = std::min(y0 + 1, light.height() - 1);
  const auto fx = static_cast<float>(inside_x - x0);
  const auto fy = static_cast<float>(inside_y - y0);
  for (int c = 0; c < light.channels(); ++c) {
    const float top = light.light(x0, y0, c) * (1.0F - fx) + light.light(x1, y0, c) * fx;
    const float low = light.light(x0, y1, c) * (1.0F - fx) + light.light(x1, y1, c) * fx;
    sum[static_cast<std::size_t>(c)] += top * (1.0F - fy) + low * fy;
  }
  return true;
}

/// Sums of one row of strip pixels.
struct RowOfSums {
  std::vector<PerChannel<float>> light;
  std::vector<int> count;
  std::vector<std::uint8_t> clip;
};

void add_row(RowOfSums& sums, const ScanGrid& grid, const RowOfPlaces& places, int samples) {
  for (std::size_t i = 0; i < places.x.size(); ++i) {
    const std::size_t pixel = i / static_cast<std::size_t>(samples);
    if (sample_light(grid.light, places.x[i], places.y[i], sums.light[pixel])) {
      ++sums.count[pixel];
      const int cx = std::clamp(static_cast<int>(places.x[i]), 0, grid.light.width() - 1);
      const int cy = std::clamp(static_cast<int>(places.y[i]), 0, grid.light.height() - 1);
      sums.clip[pixel] = static_cast<std::uint8_t>(sums.clip[pixel] | grid.clipped.at(cx, cy));
    }
  }
}

}  // namespace

int StraightStrip::column(double along_mm) const {
  const double x = std::floor((along_mm - extent.along_begin_mm) * pixels_per_mm);
  return static_cast<int>(std::clamp(x, 0.0, static_cast<double>(light.width() - 1)));
}

int StraightStrip::row(double across_mm) const {
  const double y = std::floor((across_mm - extent.across_begin_mm) * pixels_per_mm);
  return static_cast<int>(std::clamp(y, 0.0, static_cast<double>(light.height() - 1)));
}

StraightStrip straighten(const ScanGrid& grid, const FilmMap& map, const FilmExtent& extent,
                         double wanted_pixels_per_mm) {
  const double area_mm2 = (extent.along_end_mm - extent.along_begin_mm) *
                          (extent.across_end_mm - extent.across_begin_mm);
  const double pixels_per_mm =
      std::min(wanted_pixels_per_mm, std::sqrt(most_pixels / std::max(area_mm2, 1e-9)));
  const auto pixels = [&](double mm) {
    return std::max(1, static_cast<int>(std::lround(mm * pixels_per_mm)));
  };
  const int width = pixels(extent.along_end_mm - extent.along_begin_mm);
  const int height = pixels(extent.across_end_mm - extent.across_begin_mm);
  const int channels = grid.light.channels();
  StraightStrip strip;
  strip.extent = extent;
  strip.pixels_per_mm = pixels_per_mm;
  strip.light = Raster<float>(width, height, channels, std::numeric_limits<float>::quiet_NaN());
  strip.clipped = Raster<std::uint8_t>(width, height);

  const double grid_px_per_strip_px = map.pixels_per_mm() / grid.reduction / pixels_per_mm;
  const int samples =
      std::clamp(static_cast<int>(std::ceil(grid_px_per_strip_px)), 1, most_samples);
  const double step_mm = 1.0 / pixels_per_mm / samples;
  const auto columns = static_cast<std::size_t>(width);
  const auto row_samples = columns * static_cast<std::size_t>(samples);
  RowOfPlaces places{std::vector<double>(row_samples), std::vector<double>(row_samples)};
  for (int y = 0; y < height; ++y) {
    RowOfSums sums{std::vector<PerChannel<float>>(columns), std::vector<int>(columns),
                   std::vector<std::uint8_t>(columns)};
    for (int j = 0; j < samples; ++j) {
      place_row(places, map, grid.reduction, extent.along_begin_mm,
                extent.across_begin_mm + y / pixels_per_mm + (j + 0.5) * step_mm, step_mm);
      add_row(sums, grid, places, samples);
    }
    for (int x = 0; x < width; ++x) {
      const auto i = static_cast<std::size_t>(x);
      if (sums.count[i] == samples * samples) {
        for (int c = 0; c < channels; ++c) {
          strip.light.at(x, y, c) =
              sums.light[i][static_cast<std::size_t>(c)] / static_cast<float>(sums.count[i]);
        }
        strip.clipped.at(x, y) = sums.clip[i];
      }
    }
  }
  return strip;
}

void mask_outside(StraightStrip& strip, const FilmMap& map, const std::vector<PointPx>& corners,
                  double margin_mm) {
  if (corners.size() < 3) {
    return;
  }
  const double margin_px = margin_mm * map.pixels_per_mm();
  PointPx centre;
  for (const PointPx& corner : corners) {
    centre.x += corner.x / static_cast<double>(corners.size());
    centre.y += corner.y / static_cast<double>(corners.size());
  }
  // Signed distance to a side, positive on the centre's side.
  const auto inside_side = [&](PointPx a, PointPx b, PointPx at) {
    const double length = std::hypot(b.x - a.x, b.y - a.y);
    const auto distance = [&](PointPx p) {
      return ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length;
    };
    return distance(at) * (distance(centre) > 0.0 ? 1.0 : -1.0) > margin_px;
  };
  for (int y = 0; y < strip.light.height(); ++y) {
    for (int x = 0; x < strip.light.width(); ++x) {
      const PointPx at = map.scan_from_film({strip.along_mm(x), strip.across_mm(y)});
      bool inside = true;
      for (std::size_t i = 0; i < corners.size() && inside; ++i) {
        inside = inside_side(corners[i], corners[(i + 1) % corners.size()], at);
      }
      for (int c = 0; c < strip.light.channels() && !inside; ++c) {
        strip.light.at(x, y, c) = std::numeric_limits<float>::quiet_NaN();
      }
    }
  }
}

}  // namespace fogline
