#include "film/strips/perforation_candidates.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// Ladder of levels over the brightest light: from film hardly darker than a lamp that has reached
/// the top code, fine where clear film lies, up to a lamp that has fallen off by 0.3 under a dense
/// base.
std::vector<double> level_ladder() {
  std::vector<double> levels{0.006, 0.012};
  constexpr double lowest_level = 0.02;
  constexpr double highest_level = 0.95;
  constexpr double level_step = 0.03;
  for (double level = lowest_level; level <= highest_level; level += level_step) {
    levels.push_back(level);
  }
  return levels;
}
/// Smallest spot that still shows a shape, finding-image pixels each way.
constexpr int smallest_side = 4;
/// A perforation is a small part of any picture.
constexpr double largest_share_of_side = 0.25;
/// Area over upright box: 0.96 for a perforation, 0.86 turned by 3 degrees, less when blurred.
constexpr double least_fill = 0.74;
/// Length over width: 1.41 whole, more when a holder covers part of it.
constexpr double greatest_aspect = 2.8;
/// Two sightings are one spot when centres and sizes agree so far (share of the size).
constexpr double same_centre_share = 0.25;
constexpr double same_size_share = 0.2;

/// One spot at all the levels that show it, from bright to dark.
class Sighting {
 public:
  Sighting(double level, const BrightSpot& spot) { add(level, spot); }
  void add(double level, const BrightSpot& spot) {
    levels_.push_back(level);
    spots_.push_back(spot);
  }
  [[nodiscard]] const BrightSpot& last() const { return spots_.back(); }
  [[nodiscard]] std::size_t count() const { return spots_.size(); }

  /// The spot at the level where its outline changes least: in the steepest part of its edge. A
  /// lens draws a halo round bright light, into which the outline runs at darker levels.
  [[nodiscard]] BrightSpot steadiest() const {
    // Of outlines that are equally steady the later (darker) one lies nearer the edge's middle. So
    // much growth a unit of log light a sharp edge shows by its blur alone: 1.5 % a level of 0.03.
    constexpr double as_steady = 0.5;
    double least = INFINITY;
    for (std::size_t i = 1; i < spots_.size(); ++i) {
      least = std::min(least, growth(i));
    }
    std::size_t best = spots_.size() - 1;
    for (std::size_t i = 1; i < spots_.size(); ++i) {
      if (growth(i) <= least + as_steady) {
        best = i;
      }
    }
    return spots_[best];
  }

 private:
  /// Growth of the spot's sides from one level to the next: share of the side a unit of log light.
  [[nodiscard]] double growth(std::size_t i) const {
    const double before = spots_[i - 1].width + spots_[i - 1].height;
    const double after = spots_[i].width + spots_[i].height;
    // A pixel each way is no growth.
    constexpr double rounding_px = 2.0;
    return std::max(0.0, after - before - rounding_px) / before / (levels_[i] - levels_[i - 1]);
  }

  std::vector<double> levels_;
  std::vector<BrightSpot> spots_;
};

bool same_spot(const BrightSpot& a, const BrightSpot& b) {
  const double size = std::min(a.width, a.height);
  return std::abs(a.x - b.x) < same_centre_share * size &&
         std::abs(a.y - b.y) < same_centre_share * size &&
         std::abs(a.width - b.width) < std::max(1.5, same_size_share * a.width) &&
         std::abs(a.height - b.height) < std::max(1.5, same_size_share * a.height);
}

/// Sightings in a coarse grid of cells, so that neighbours are found without a search through all.
class SightingMap {
 public:
  SightingMap(int width, int height, int cell)
      : cell_(cell),
        columns_(width / cell + 1),
        cells_(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(height / cell + 1)) {}

  void add(double level, const BrightSpot& spot) {
    const int column = static_cast<int>(spot.x) / cell_;
    const int row = static_cast<int>(spot.y) / cell_;
    for (int j = row - 1; j <= row + 1; ++j) {
      for (int i = column - 1; i <= column + 1; ++i) {
        if (Sighting* match = matching(i, j, spot)) {
          match->add(level, spot);
          return;
        }
      }
    }
    at(column, row).emplace_back(level, spot);
  }

  [[nodiscard]] std::vector<BrightSpot> agreed() const {
    std::vector<BrightSpot> spots;
    for (const auto& cell : cells_) {
      for (const Sighting& sighting : cell) {
        if (sighting.count() >= 2) {
          spots.push_back(sighting.steadiest());
        }
      }
    }
    return spots;
  }

 private:
  std::vector<Sighting>& at(int column, int row) {
    return cells_[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
                  static_cast<std::size_t>(column)];
  }
  Sighting* matching(int column, int row, const BrightSpot& spot) {
    const int rows = static_cast<int>(cells_.size()) / columns_;
    if (column < 0 || row < 0 || column >= columns_ || row >= rows) {
      return nullptr;
    }
    for (Sighting& sighting : at(column, row)) {
      if (same_spot(sighting.last(), spot)) {
        return &sighting;
      }
    }
    return nullptr;
  }

  int cell_;
  int columns_;
  std::vector<std::vector<Sighting>> cells_;
};

bool has_hole_shape(const int* stats, int columns, int rows) {
  const int width = stats[cv::CC_STAT_WIDTH];
  const int height = stats[cv::CC_STAT_HEIGHT];
  if (std::min(width, height) < smallest_side || width > largest_share_of_side * columns ||
      height > largest_share_of_side * rows) {
    return false;
  }
  const double fill = static_cast<double>(stats[cv::CC_STAT_AREA]) / (width * height);
  const double aspect = static_cast<double>(std::max(width, height)) / std::min(width, height);
  return fill >= least_fill && aspect <= greatest_aspect;
}

}  // namespace

std::vector<BrightSpot> bright_spots(const FindingImage& image) {
  const cv::Mat1f& log_light = image.log_light;
  constexpr int map_cell_px = 32;
  SightingMap sightings(log_light.cols, log_light.rows, map_cell_px);
  cv::Mat labels;
  cv::Mat stats;
  cv::Mat centroids;
  for (const double level : level_ladder()) {
    const cv::Mat mask = log_light < level;
    const int count = cv::connectedComponentsWithStats(mask, labels, stats, centroids, 4);
    for (int label = 1; label < count; ++label) {
      const int* row = stats.ptr<int>(label);
      if (!has_hole_shape(row, log_light.cols, log_light.rows)) {
        continue;
      }
      BrightSpot spot;
      spot.x = centroids.at<double>(label, 0) + 0.5;
      spot.y = centroids.at<double>(label, 1) + 0.5;
      spot.width = row[cv::CC_STAT_WIDTH];
      spot.height = row[cv::CC_STAT_HEIGHT];
      spot.level =
          static_cast<double>(log_light(static_cast<int>(spot.y), static_cast<int>(spot.x)));
      spot.at_border = row[cv::CC_STAT_LEFT] == 0 || row[cv::CC_STAT_TOP] == 0 ||
                       row[cv::CC_STAT_LEFT] + row[cv::CC_STAT_WIDTH] == log_light.cols ||
                       row[cv::CC_STAT_TOP] + row[cv::CC_STAT_HEIGHT] == log_light.rows;
      sightings.add(level, spot);
    }
  }
  return sightings.agreed();
}

}  // namespace fogline
