#include "marks/spot_peaks.h"

#include "marks/local_scale.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// A peak must exceed what is usual round about by this factor; the tail of grain itself ends
/// earlier (a tile has a million places: 5 standard deviations for one), picture is the reason for
/// the rest.
constexpr double least_sigmas = 6.0;
/// Large spots are judged by their shape, and frame borders near them raise what is usual.
constexpr double large_mm = 0.3;
constexpr double least_large_sigmas = 3.0;
/// And be at least so strong: weaker spots are nothing anybody would see. A disc answers with about
/// 0.6 of its contrast.
constexpr double least_response = 0.02;
/// Side of the neighbourhood that a response is compared with, in the spot's own diameters and in
/// mm: wide enough to hold some twenty spots of the same size.
constexpr double block_diameters = 8.0;
constexpr double least_block_mm = 2.0;
constexpr double scale_share = 0.96;
/// More than this a tile is no dirt but picture; the strongest are kept.
constexpr std::size_t most_peaks = 600;
/// Diameter of the disc that answers most, over the narrow Gaussian's standard deviation, for a
/// wide one of twice that.
constexpr double diameter_over_sd = 2.7;

struct Level {
  cv::Mat1f density;
  cv::Mat1b usable;
  double shrink = 1.0;
};

void add_peaks(const Level& level, const MarkTile& tile, double sd_px,
               std::vector<SpotPeak>& peaks) {
  cv::Mat1f narrow;
  cv::Mat1f wide;
  cv::GaussianBlur(level.density, narrow, {}, sd_px);
  cv::GaussianBlur(level.density, wide, {}, 2.0 * sd_px);
  const cv::Mat1f response(narrow - wide);
  const double mm = level.shrink / tile.pixels_per_mm;
  const double diameter_mm = diameter_over_sd * sd_px * mm;
  const double block_mm = std::max(least_block_mm, block_diameters * diameter_mm);
  const cv::Mat1f scale = local_scale(response, level.usable,
                                      std::max(8, static_cast<int>(block_mm / mm)), scale_share);
  const cv::Mat1f size(cv::abs(response));
  cv::Mat1f greatest;
  cv::dilate(size, greatest, cv::Mat());
  for (int y = 1; y + 1 < response.rows; ++y) {
    for (int x = 1; x + 1 < response.cols; ++x) {
      const float value = size(y, x);
      if (value < greatest(y, x) || value < least_response || level.usable(y, x) == 0) {
        continue;
      }
      const double sigmas = static_cast<double>(value) / static_cast<double>(scale(y, x));
      if (sigmas >= (diameter_mm < large_mm ? least_sigmas : least_large_sigmas)) {
        peaks.push_back({{(x + 0.5) * level.shrink, (y + 0.5) * level.shrink},
                         diameter_mm,
                         static_cast<double>(response(y, x)),
                         sigmas});
      }
    }
  }
}

void count_crowds(std::vector<SpotPeak>& peaks, double pixels_per_mm) {
  constexpr double crowd_mm = 3.0;
  for (SpotPeak& peak : peaks) {
    peak.crowd =
        static_cast<int>(std::count_if(peaks.begin(), peaks.end(), [&](const SpotPeak& other) {
          const double apart = std::hypot(other.at.x - peak.at.x, other.at.y - peak.at.y);
          return other.diameter_mm < 2.1 * peak.diameter_mm &&
                 peak.diameter_mm < 2.1 * other.diameter_mm &&
                 std::abs(other.response) > 0.5 * std::abs(peak.response) &&
                 apart > 1.5 * std::max(peak.diameter_mm, other.diameter_mm) * pixels_per_mm &&
                 apart < crowd_mm * pixels_per_mm;
        }));
  }
}

}  // namespace

std::vector<SpotPeak> spot_peaks(const MarkTile& tile, double smallest_mm, double largest_mm) {
  constexpr double half_octave = 1.4142;
  std::vector<SpotPeak> peaks;
  Level level{tile.density, tile.usable, 1.0};
  while (diameter_over_sd * level.shrink / tile.pixels_per_mm <= largest_mm) {
    for (const double sd_px : {1.0, half_octave}) {
      const double diameter_mm = diameter_over_sd * sd_px * level.shrink / tile.pixels_per_mm;
      if (diameter_mm >= smallest_mm / half_octave && diameter_mm <= largest_mm) {
        add_peaks(level, tile, sd_px, peaks);
      }
    }
    const cv::Size half(level.density.cols / 2, level.density.rows / 2);
    if (std::min(half.width, half.height) < 16) {
      break;
    }
    Level next;
    cv::resize(level.density, next.density, half, 0, 0, cv::INTER_AREA);
    cv::resize(level.usable, next.usable, half, 0, 0, cv::INTER_NEAREST);
    next.shrink = 2.0 * level.shrink;
    level = next;
  }
  std::sort(peaks.begin(), peaks.end(),
            [](const SpotPeak& a, const SpotPeak& b) { return a.sigmas > b.sigmas; });
  if (peaks.size() > most_peaks) {
    peaks.resize(most_peaks);
  }
  count_crowds(peaks, tile.pixels_per_mm);
  return peaks;
}

}  // namespace fogline
