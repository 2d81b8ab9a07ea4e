#include "film/wedges/wedge_patches.h"

#include "numerics/robust.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// Differences of log light below which neighbours belong to one patch: from clean light steps to
/// grainy dark ones.
constexpr std::array<float, 5> thresholds{0.012F, 0.025F, 0.05F, 0.1F, 0.2F};
constexpr int smallest_side_px = 4;
constexpr double greatest_area_share = 0.25;
/// A step is a rectangle: its pixels fill this part of its box at least (turned a little, dirty).
constexpr double least_fill = 0.7;
/// Most pixels whose median a patch's level is.
constexpr double level_samples = 400.0;

double level_of(const cv::Mat1f& smooth, const cv::Mat1i& labels, int label, const cv::Rect& box) {
  std::vector<double> levels;
  const int step = std::max(1, static_cast<int>(std::sqrt(box.area() / level_samples)));
  for (int y = box.y; y < box.y + box.height; y += step) {
    for (int x = box.x; x < box.x + box.width; x += step) {
      if (labels(y, x) == label) {
        levels.push_back(static_cast<double>(smooth(y, x)));
      }
    }
  }
  return median(levels);
}

bool same_patch(const EvenPatch& a, const EvenPatch& b) {
  return std::abs(a.middle.x - b.middle.x) < 0.5 * std::min(a.width, b.width) &&
         std::abs(a.middle.y - b.middle.y) < 0.5 * std::min(a.height, b.height);
}

}  // namespace

cv::Mat1f smoothed(const FindingImage& image) {
  cv::Mat1f smooth;
  constexpr int median_px = 5;
  cv::medianBlur(image.log_light, smooth, median_px);
  return smooth;
}

cv::Mat1f unevenness(const cv::Mat1f& smooth) {
  cv::Mat1f uneven;
  cv::morphologyEx(smooth, uneven, cv::MORPH_GRADIENT,
                   cv::getStructuringElement(cv::MORPH_RECT, {3, 3}));
  return uneven;
}

std::vector<EvenPatch> even_patches(const cv::Mat1f& smooth, const cv::Mat1f& uneven) {
  std::vector<EvenPatch> patches;
  const double greatest_area = greatest_area_share * static_cast<double>(smooth.total());
  for (const float threshold : thresholds) {
    cv::Mat1b even;
    cv::compare(uneven, threshold, even, cv::CMP_LT);
    cv::Mat1i labels;
    cv::Mat stats;
    cv::Mat middles;
    const int count = cv::connectedComponentsWithStats(even, labels, stats, middles, 4, CV_32S);
    for (int label = 1; label < count; ++label) {
      const cv::Rect box(
          stats.at<int>(label, cv::CC_STAT_LEFT), stats.at<int>(label, cv::CC_STAT_TOP),
          stats.at<int>(label, cv::CC_STAT_WIDTH), stats.at<int>(label, cv::CC_STAT_HEIGHT));
      const double area = stats.at<int>(label, cv::CC_STAT_AREA);
      if (std::min(box.width, box.height) < smallest_side_px || area > greatest_area ||
          area < least_fill * box.area()) {
        continue;
      }
      // A pixel's place is its middle: half a pixel beyond its number.
      const EvenPatch patch{
          {middles.at<double>(label, 0) + 0.5, middles.at<double>(label, 1) + 0.5},
          static_cast<double>(box.width),
          static_cast<double>(box.height),
          level_of(smooth, labels, label, box)};
      // Seen before at a finer threshold: that one is nearer to its own step.
      const bool known = std::any_of(patches.begin(), patches.end(),
                                     [&](const EvenPatch& p) { return same_patch(p, patch); });
      if (!known) {
        patches.push_back(patch);
      }
    }
  }
  return patches;
}

}  // namespace fogline
