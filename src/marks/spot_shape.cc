#include "marks/spot_shape.h"

#include "marks/neighbourhood.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// No channel is told denser.
constexpr double most_density = 4.0;

constexpr int directions = 24;
/// 10th to 90th percentile of a normal law, in standard deviations.
constexpr double normal_span = 2.563;
/// The surround: from its inner to its outer radius, in radii of the spot; its inner end lies so
/// many pixels off, that blur doesn't reach it.
constexpr double surround_begin = 1.4;
constexpr double surround_end = 2.4;
constexpr double blur_reach_px = 2.0;

double share_of(std::vector<float>& values, double share) {
  const auto rank = static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1));
  std::nth_element(values.begin(), values.begin() + rank, values.end());
  return static_cast<double>(values[static_cast<std::size_t>(rank)]);
}

struct Surround {
  double density = 0.0;
  double spread = 0.0;
  double usable_share = 0.0;
};

/// Median and spread in a ring about the spot.
std::optional<Surround> read_surround(const MarkTile& tile, cv::Point2d middle, double radius_px) {
  const double inner = std::max(surround_begin * radius_px, radius_px + blur_reach_px);
  const double outer = std::max(surround_end * radius_px, inner + blur_reach_px);
  std::vector<float> values;
  int all = 0;
  const int reach = static_cast<int>(std::ceil(outer));
  const int cx = static_cast<int>(middle.x);
  const int cy = static_cast<int>(middle.y);
  // A large ring needs no more than some thousand of its pixels.
  const int step = 1 + reach / 32;
  for (int y = cy - reach; y <= cy + reach; y += step) {
    for (int x = cx - reach; x <= cx + reach; x += step) {
      const double distance = std::hypot(x + 0.5 - middle.x, y + 0.5 - middle.y);
      if (distance < inner || distance > outer) {
        continue;
      }
      ++all;
      if (x >= 0 && y >= 0 && x < tile.density.cols && y < tile.density.rows &&
          tile.usable(y, x) != 0) {
        values.push_back(tile.density(y, x));
      }
    }
  }
  constexpr std::size_t enough = 12;
  if (values.size() < enough) {
    return std::nullopt;
  }
  Surround surround;
  surround.usable_share = static_cast<double>(values.size()) / all;
  surround.density = share_of(values, 0.5);
  surround.spread = (share_of(values, 0.9) - share_of(values, 0.1)) / normal_span;
  return surround;
}

/// Density at a place between pixels.
double density_at(const cv::Mat1f& density, double x, double y) {
  const double px = std::clamp(x - 0.5, 0.0, density.cols - 1.001);
  const double py = std::clamp(y - 0.5, 0.0, density.rows - 1.001);
  const int x0 = static_cast<int>(px);
  const int y0 = static_cast<int>(py);
  const int x1 = std::min(x0 + 1, density.cols - 1);
  const int y1 = std::min(y0 + 1, density.rows - 1);
  const double fx = px - x0;
  const double fy = py - y0;
  const auto at = [&](int row, int column) { return static_cast<double>(density(row, column)); };
  return (at(y0, x0) * (1.0 - fx) + at(y0, x1) * fx) * (1.0 - fy) +
         (at(y1, x0) * (1.0 - fx) + at(y1, x1) * fx) * fy;
}

/// How even and how sharp the edge is, over all directions.
void read_edge(const cv::Mat1f& smooth, cv::Point2d offset, double pixels_per_mm,
               SpotShape& shape) {
  const double radius = 0.5 * shape.diameter_mm * pixels_per_mm;
  const cv::Point2d middle = shape.middle - offset;
  std::vector<float> widths;
  std::vector<double> radii;
  for (int i = 0; i < directions; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / directions;
    double r80 = -1.0;
    double r50 = -1.0;
    double r20 = -1.0;
    const double step = std::max(0.2, radius / 40.0);
    for (double r = 0.0; r < 2.0 * radius + 4.0; r += step) {
      const double density =
          density_at(smooth, middle.x + r * std::cos(angle), middle.y + r * std::sin(angle));
      const double share = (density - shape.surround_density) / shape.contrast;
      r80 = share >= 0.8 && r50 < 0.0 ? r : r80;
      r50 = share < 0.5 && r50 < 0.0 && r80 >= 0.0 ? r : r50;
      if (share < 0.2 && r80 >= 0.0) {
        r20 = r;
        break;
      }
    }
    if (r50 >= 0.0 && r20 >= 0.0) {
      radii.push_back(r50);
      widths.push_back(static_cast<float>(r20 - r80));
    }
  }
  if (radii.size() < directions / 3) {
    return;
  }
  double mean = 0.0;
  for (const double r : radii) {
    mean += r / static_cast<double>(radii.size());
  }
  const double slack = std::max(0.25 * mean, 1.0);
  const auto even = std::count_if(radii.begin(), radii.end(),
                                  [&](double r) { return std::abs(r - mean) < slack; });
  shape.even_edge = static_cast<double>(even) / directions;
  shape.edge_mm = share_of(widths, 0.5) / pixels_per_mm;
}

struct Outline {
  cv::Mat1b mask;
  cv::Rect box;  ///< in the window
};

/// The connected area beyond half contrast that holds the peak; nothing where it runs out of the
/// window.
std::optional<Outline> outline_at(const cv::Mat1f& window, cv::Point seed, double half, int sign) {
  cv::Mat1b beyond;
  cv::compare(window, half, beyond, sign > 0 ? cv::CMP_GT : cv::CMP_LT);
  if (beyond(seed) == 0) {
    return std::nullopt;
  }
  constexpr int mine = 100;
  cv::Rect box;
  cv::floodFill(beyond, seed, mine, &box, 0, 0, 4);
  if (box.x == 0 || box.y == 0 || box.br().x >= window.cols || box.br().y >= window.rows) {
    return std::nullopt;
  }
  Outline outline;
  outline.box = box;
  cv::compare(beyond, mine, outline.mask, cv::CMP_EQ);
  return outline;
}

void read_outline(const Outline& outline, const MarkTile& tile, cv::Point corner,
                  SpotShape& shape) {
  const double mm = 1.0 / tile.pixels_per_mm;
  const cv::Moments moments = cv::moments(outline.mask, true);
  shape.middle = {corner.x + moments.m10 / moments.m00 + 0.5,
                  corner.y + moments.m01 / moments.m00 + 0.5};
  shape.box = outline.box + corner;
  shape.area_mm2 = moments.m00 * mm * mm;
  shape.diameter_mm = std::sqrt(4.0 / std::numbers::pi * shape.area_mm2);
  // A pixel's own moment (1/12 each way) is part of the area's, else few pixels look too round.
  const double spread = moments.mu20 + moments.mu02 + moments.m00 / 6.0;
  shape.circularity = moments.m00 * moments.m00 / (2.0 * std::numbers::pi * spread);
  std::vector<std::vector<cv::Point>> contours;
  cv::findContours(outline.mask, contours, cv::RETR_EXTERNAL, cv::CHAIN_APPROX_NONE);
  if (!contours.empty() && contours.front().size() > 2) {
    std::vector<cv::Point> hull;
    cv::convexHull(contours.front(), hull);
    // Contours run through pixel middles: half a pixel all round belongs to the area too.
    const double hull_area = cv::contourArea(hull) + 0.5 * cv::arcLength(hull, true) + 1.0;
    shape.solidity = std::min(1.0, moments.m00 / hull_area);
    const cv::RotatedRect rect = cv::minAreaRect(contours.front());
    shape.size_mm = (static_cast<double>(std::max(rect.size.width, rect.size.height)) + 1.0) * mm;
  } else {
    shape.solidity = 1.0;
    shape.size_mm = shape.diameter_mm;
  }
}

/// Contrast of each channel over the same core and surround.
void read_colour(const MarkTile& tile, SpotShape& shape) {
  if (tile.transmittance.channels() < most_channels) {
    return;
  }
  const double radius = 0.5 * shape.diameter_mm * tile.pixels_per_mm;
  const int reach = static_cast<int>(std::ceil(surround_end * radius + blur_reach_px));
  PerChannel<std::vector<float>> core;
  PerChannel<std::vector<float>> round;
  for (int y = static_cast<int>(shape.middle.y) - reach;
       y <= static_cast<int>(shape.middle.y) + reach; ++y) {
    for (int x = static_cast<int>(shape.middle.x) - reach;
         x <= static_cast<int>(shape.middle.x) + reach; ++x) {
      if (!tile.transmittance.contains(x, y) || tile.usable(y, x) == 0) {
        continue;
      }
      const double distance = std::hypot(x + 0.5 - shape.middle.x, y + 0.5 - shape.middle.y);
      const bool inside = distance < std::max(0.6 * radius, 1.0);
      if (!inside && distance < surround_begin * radius + 1.0) {
        continue;
      }
      for (int c = 0; c < most_channels; ++c) {
        const auto density = static_cast<float>(std::min(
            density_from_transmittance(static_cast<double>(tile.transmittance.at(x, y, c))),
            most_density));
        (inside ? core : round)[static_cast<std::size_t>(c)].push_back(density);
      }
    }
  }
  double least = INFINITY;
  double most = -std::numeric_limits<double>::infinity();
  for (std::size_t c = 0; c < core.size(); ++c) {
    if (core[c].empty() || round[c].empty()) {
      return;
    }
    const double contrast = share_of(core[c], 0.5) - share_of(round[c], 0.5);
    least = std::min(least, contrast);
    most = std::max(most, contrast);
  }
  shape.colour_spread = (most - least) / std::abs(shape.contrast);
}

double unevenness_inside(const cv::Mat1f& smooth, const SpotShape& shape, cv::Point corner,
                         double radius_px) {
  std::vector<float> inside;
  const double reach = 0.66 * radius_px;
  for (int y = 0; y < smooth.rows; ++y) {
    for (int x = 0; x < smooth.cols; ++x) {
      if (std::hypot(x + corner.x + 0.5 - shape.middle.x, y + corner.y + 0.5 - shape.middle.y) <
          reach) {
        inside.push_back(smooth(y, x));
      }
    }
  }
  if (inside.size() < 8) {
    return 0.0;
  }
  return (share_of(inside, 0.9) - share_of(inside, 0.1)) / std::abs(shape.contrast);
}

/// Density half-way in light: blur mixes light, so the edge of an opaque grain lies where half of
/// its light is gone, which is a low density.
double half_light_density(const SpotShape& shape) {
  return density_from_transmittance(0.5 * (transmittance_from_density(shape.core_density) +
                                           transmittance_from_density(shape.surround_density)));
}

/// One try with an assumed diameter.
std::optional<SpotShape> outlined(const MarkTile& tile, const SpotPeak& peak, double diameter_mm) {
  const double radius = 0.5 * diameter_mm * tile.pixels_per_mm;
  const std::optional<Surround> surround = read_surround(tile, peak.at, radius);
  constexpr double least_usable = 0.7;
  if (!surround || surround->usable_share < least_usable) {
    return std::nullopt;
  }
  const int reach = static_cast<int>(std::ceil(surround_end * radius + 4.0));
  const cv::Point middle(static_cast<int>(peak.at.x), static_cast<int>(peak.at.y));
  const cv::Rect rect = cv::Rect(middle.x - reach, middle.y - reach, 2 * reach + 1, 2 * reach + 1) &
                        cv::Rect(0, 0, tile.density.cols, tile.density.rows);
  // Grain is smoothed at a tenth of the spot, so that the outline is one.
  cv::Mat1f smooth = tile.density(rect).clone();
  const double sd = 0.1 * 2.0 * radius;
  if (sd > 0.5) {
    cv::GaussianBlur(smooth, smooth, {}, sd);
  }
  const int sign = peak.response > 0.0 ? 1 : -1;
  const cv::Point seed = middle - rect.tl();
  const int core = std::max(1, static_cast<int>(0.3 * radius));
  const cv::Rect core_rect = cv::Rect(seed.x - core, seed.y - core, 2 * core + 1, 2 * core + 1) &
                             cv::Rect(0, 0, smooth.cols, smooth.rows);
  double low = 0.0;
  double high = 0.0;
  cv::Point low_at;
  cv::Point high_at;
  cv::minMaxLoc(smooth(core_rect), &low, &high, &low_at, &high_at);
  SpotShape shape;
  shape.core_density = sign > 0 ? high : low;
  shape.surround_density = surround->density;
  shape.contrast = shape.core_density - shape.surround_density;
  if (shape.contrast * sign <= 0.0) {
    return std::nullopt;
  }
  const auto outline = outline_at(smooth, (sign > 0 ? high_at : low_at) + core_rect.tl(),
                                  half_light_density(shape), sign);
  if (!outline) {
    return std::nullopt;
  }
  read_outline(*outline, tile, rect.tl(), shape);
  shape.surround_usable = surround->usable_share;
  shape.stands_out = std::abs(shape.contrast) / std::max(surround->spread, 1e-4);
  read_edge(smooth, rect.tl(), tile.pixels_per_mm, shape);
  shape.unevenness =
      unevenness_inside(smooth, shape, rect.tl(), 0.5 * shape.diameter_mm * tile.pixels_per_mm);
  return shape;
}

}  // namespace

std::optional<SpotShape> spot_shape(const MarkTile& tile, const SpotPeak& peak) {
  std::optional<SpotShape> shape = outlined(tile, peak, peak.diameter_mm);
  // The first outline's size is better than the peak's: read again with it.
  constexpr int rounds = 2;
  for (int round = 0; round < rounds; ++round) {
    SpotPeak better = peak;
    double diameter_mm = 1.5 * peak.diameter_mm;
    if (shape) {
      better.at = shape->middle;
      diameter_mm = shape->diameter_mm;
    } else if (round > 0) {
      return std::nullopt;
    }
    shape = outlined(tile, better, diameter_mm);
  }
  if (shape) {
    read_colour(tile, *shape);
    constexpr double round_mm = 3.0;
    shape->sigmas = peak.sigmas;
    shape->crowd = peak.crowd;
    shape->beyond =
        beyond_range(range_round(tile, shape->box, round_mm), shape->core_density, shape->contrast);
  }
  return shape;
}

}  // namespace fogline
