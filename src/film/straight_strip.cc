#include <fogline/film/straight_strip.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace fogline {

namespace {

/// Most samples a strip pixel, each way: finer scans are thinned, the noise average is enough.
constexpr int most_samples = 5;

/// Bilinear light at a place of the grid, in grid pixels; false outside.
bool sample_light(const LightRaster& light, double gx, double gy, PerChannel<float>& sum) {
  const double x = gx - 0.5;
  const double y = gy - 0.5;
  constexpr double half = 0.5;
  if (x < -half || y < -half || x > light.width() - half || y > light.height() - half) {
    return false;
  }
  const int x0 = std::clamp(static_cast<int>(std::floor(x)), 0, light.width() - 1);
  const int y0 = std::clamp(static_cast<int>(std::floor(y)), 0, light.height() - 1);
  const int x1 = std::min(x0 + 1, light.width() - 1);
  const int y1 = std::min(y0 + 1, light.height() - 1);
  const auto fx = static_cast<float>(std::clamp(x - x0, 0.0, 1.0));
  const auto fy = static_cast<float>(std::clamp(y - y0, 0.0, 1.0));
  for (int c = 0; c < light.channels(); ++c) {
    const float top = light.light(x0, y0, c) * (1.0F - fx) + light.light(x1, y0, c) * fx;
    const float low = light.light(x0, y1, c) * (1.0F - fx) + light.light(x1, y1, c) * fx;
    sum[static_cast<std::size_t>(c)] += top * (1.0F - fy) + low * fy;
  }
  return true;
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
                         double pixels_per_mm) {
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
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      PerChannel<float> sum{};
      int count = 0;
      std::uint8_t clip = 0;
      for (int j = 0; j < samples; ++j) {
        for (int i = 0; i < samples; ++i) {
          const PointPx at = map.scan_from_film(
              {extent.along_begin_mm + x / pixels_per_mm + (i + 0.5) * step_mm,
               extent.across_begin_mm + y / pixels_per_mm + (j + 0.5) * step_mm});
          const double gx = at.x / grid.reduction;
          const double gy = at.y / grid.reduction;
          if (sample_light(grid.light, gx, gy, sum)) {
            ++count;
            const int cx = std::clamp(static_cast<int>(gx), 0, grid.light.width() - 1);
            const int cy = std::clamp(static_cast<int>(gy), 0, grid.light.height() - 1);
            clip = static_cast<std::uint8_t>(clip | grid.clipped.at(cx, cy));
          }
        }
      }
      if (count == samples * samples) {
        for (int c = 0; c < channels; ++c) {
          strip.light.at(x, y, c) = sum[static_cast<std::size_t>(c)] / static_cast<float>(count);
        }
        strip.clipped.at(x, y) = clip;
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
