// Fibres: threads 0.5 to 6 mm long and 10 to 30 um thick (common practice, no source), denser
// because they are opaque, curved, of one width from end to end.
//
// Crests of lines are linked where they stand out of their neighbourhood. What parts a thread from
// a line of the picture: nothing else of its kind lies near it, and it takes the same share of
// light all along, whatever lies below.

#include "marks/find_threads.h"

#include "marks/local_scale.h"
#include "marks/neighbourhood.h"
#include "marks/ridge.h"
#include "marks/weigh_sign.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// A thread is thinner than the scan can tell apart from this.
constexpr double width_px = 2.5;
/// A link of the chain, its seed, over what lines of grain and picture are usual round about.
constexpr double link_sigmas = 2.2;
constexpr double seed_sigmas = 4.5;
constexpr float least_height = 0.035F;
constexpr double block_mm = 3.0;
/// Neighbourhood searched for other lines.
constexpr double near_mm = 0.8;
/// Sides that differ by more than this share of the height make an edge of it.
constexpr double most_uneven = 0.8;
/// Threads of one kind round one within this: a window's bars.
constexpr double crowd_mm = 5.0;

struct Chain {
  std::vector<cv::Point> links;
  cv::Rect box;
  /// Along it from one end to the other, pixels.
  double length_px = 0.0;
  /// Share of the links that lie on the way from end to end: less where it branches or closes.
  double unbranched = 0.0;
};

double median_of(std::vector<float> values, double share) {
  const auto rank = static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1));
  std::nth_element(values.begin(), values.begin() + rank, values.end());
  return static_cast<double>(values[static_cast<std::size_t>(rank)]);
}

/// The link farthest from `start` along the chain, and how far; distances in `way`.
cv::Point farthest(const cv::Mat1b& mask, cv::Point start, cv::Mat1f& way) {
  way = cv::Mat1f(mask.size(), -1.0F);
  way(start) = 0.0F;
  std::vector<cv::Point> front{start};
  cv::Point last = start;
  while (!front.empty()) {
    std::vector<cv::Point> next;
    for (const cv::Point& at : front) {
      for (int dy = -1; dy <= 1; ++dy) {
        for (int dx = -1; dx <= 1; ++dx) {
          const cv::Point to(at.x + dx, at.y + dy);
          if (to.x < 0 || to.y < 0 || to.x >= mask.cols || to.y >= mask.rows || mask(to) == 0 ||
              way(to) >= 0.0F) {
            continue;
          }
          way(to) = way(at) + std::hypot(static_cast<float>(dx), static_cast<float>(dy));
          last = way(to) > way(last) ? to : last;
          next.push_back(to);
        }
      }
    }
    front.swap(next);
  }
  return last;
}

void measure_way(const cv::Mat1b& mask, Chain& chain) {
  cv::Mat1f way;
  const cv::Point one_end = farthest(mask, chain.links.front() - chain.box.tl(), way);
  const cv::Point other_end = farthest(mask, one_end, way);
  chain.length_px = static_cast<double>(way(other_end)) + 1.0;
  chain.unbranched = std::min(1.0, chain.length_px / static_cast<double>(chain.links.size()));
}

std::vector<Chain> chains_of(const cv::Mat1b& weak, const cv::Mat1b& strong, int least_links) {
  // A missing pixel doesn't break a thread.
  cv::Mat1b bridged;
  cv::dilate(weak, bridged, cv::Mat());
  cv::Mat labels;
  cv::Mat stats;
  cv::Mat middles;
  const int count = cv::connectedComponentsWithStats(bridged, labels, stats, middles, 8);
  std::vector<Chain> chains;
  for (int label = 1; label < count; ++label) {
    Chain chain;
    chain.box = {stats.at<int>(label, cv::CC_STAT_LEFT), stats.at<int>(label, cv::CC_STAT_TOP),
                 stats.at<int>(label, cv::CC_STAT_WIDTH), stats.at<int>(label, cv::CC_STAT_HEIGHT)};
    if (std::max(chain.box.width, chain.box.height) < least_links / 2) {
      continue;
    }
    const cv::Mat1b mask(labels(chain.box) == label);
    int seeds = 0;
    for (int y = chain.box.y; y < chain.box.br().y; ++y) {
      for (int x = chain.box.x; x < chain.box.br().x; ++x) {
        if (weak(y, x) != 0 && mask(y - chain.box.y, x - chain.box.x) != 0) {
          chain.links.emplace_back(x, y);
          seeds += strong(y, x) != 0 ? 1 : 0;
        }
      }
    }
    if (4 * seeds >= static_cast<int>(chain.links.size()) && !chain.links.empty()) {
      measure_way(mask, chain);
      chains.push_back(std::move(chain));
    }
  }
  return chains;
}

/// Share of the crests near a chain that are its own.
double alone_share(const Chain& chain, const cv::Mat1b& crests, int reach) {
  cv::Rect window = chain.box + cv::Size(2 * reach, 2 * reach) - cv::Point(reach, reach);
  window &= cv::Rect(0, 0, crests.cols, crests.rows);
  cv::Mat1b zone(window.size(), static_cast<unsigned char>(0));
  for (const cv::Point& link : chain.links) {
    zone(link - window.tl()) = 255;
  }
  cv::dilate(zone, zone,
             cv::getStructuringElement(cv::MORPH_ELLIPSE, {2 * reach + 1, 2 * reach + 1}));
  const int all = cv::countNonZero(zone & crests(window));
  return static_cast<double>(chain.links.size()) / std::max(1, all);
}

/// Middle half of the heights along the chain, over their median: small for an opaque thread.
double height_spread(const Chain& chain, const cv::Mat1f& height, double& median) {
  std::vector<float> heights;
  for (const cv::Point& link : chain.links) {
    heights.push_back(height(link));
  }
  median = median_of(heights, 0.5);
  return (median_of(heights, 0.75) - median_of(heights, 0.25)) / median;
}

/// Breadth of an opaque thread that takes so much light: the height is that of the smoothed
/// profile, about one pixel and blur broad.
double thread_width_mm(double height, double pixels_per_mm) {
  constexpr double profile_px = 3.0;
  return (1.0 - std::pow(10.0, -height)) * profile_px / pixels_per_mm;
}

/// Share of the links whose direction lies near the commonest one, a right angle counting as none:
/// near 1 for bars, frames and corners, less for what wanders.
double squareness(const Chain& chain, const Ridge& ridge) {
  constexpr int bins = 18;  // of 5 degrees; a bin and its neighbours make 15
  std::array<int, bins> counts{};
  for (const cv::Point& link : chain.links) {
    const double turn = static_cast<double>(ridge.across(link)) * 2.0 / std::numbers::pi;
    const double quarter = turn - std::floor(turn);
    ++counts[static_cast<std::size_t>(std::min(bins - 1, static_cast<int>(quarter * bins)))];
  }
  int most = 0;
  for (std::size_t i = 0; i < bins; ++i) {
    most = std::max(most, counts[i] + counts[(i + 1) % bins] + counts[(i + bins - 1) % bins]);
  }
  return static_cast<double>(most) / static_cast<double>(chain.links.size());
}

/// Median difference between the two sides of a chain, over its height. Under a thread the film
/// goes on; the gap between two branches has a branch on each side.
double uneven_sides(const Chain& chain, const MarkTile& tile, const Ridge& ridge) {
  constexpr double side_px = 4.0;
  std::vector<float> differences;
  for (const cv::Point& link : chain.links) {
    const auto angle = static_cast<double>(ridge.across(link));
    const auto at = [&](double side) {
      const int x = static_cast<int>(std::lround(link.x + side * std::cos(angle)));
      const int y = static_cast<int>(std::lround(link.y + side * std::sin(angle)));
      return tile.density(std::clamp(y, 0, tile.density.rows - 1),
                          std::clamp(x, 0, tile.density.cols - 1));
    };
    differences.push_back(std::abs(at(side_px) - at(-side_px)) / ridge.height(link));
  }
  return median_of(differences, 0.5);
}

/// Straight along the film: a scratch, found elsewhere.
bool runs_along(const Chain& chain) {
  constexpr double flat = 0.03;
  return chain.box.height <= 4 || chain.box.height < flat * chain.box.width;
}

void doubt_crowds(std::vector<MarkCandidate>& marks, double weight) {
  const std::vector<MarkCandidate> all = marks;
  for (MarkCandidate& mark : marks) {
    const auto others = std::count_if(all.begin(), all.end(), [&](const MarkCandidate& other) {
      constexpr double alike = 1.5;
      const double apart = std::hypot(other.middle.along_mm - mark.middle.along_mm,
                                      other.middle.across_mm - mark.middle.across_mm);
      return apart > 0.0 && apart < crowd_mm &&
             other.contrast_density < alike * mark.contrast_density &&
             mark.contrast_density < alike * other.contrast_density;
    });
    mark.log_odds += weight * static_cast<double>(std::min<std::ptrdiff_t>(others, 8));
  }
}

}  // namespace

std::vector<MarkCandidate> find_threads(const MarkTile& tile, const FilmStrip& film,
                                        const FibreKnowledge& knowledge) {
  const double px_mm = tile.pixels_per_mm;
  constexpr int sides_px = 4;
  const cv::Mat1b usable = inner_usable(tile.usable, sides_px, sides_px);
  const cv::Mat1f heights = ridge_heights(tile.density, width_px, 1);
  const cv::Mat1f scale = local_scale(heights, usable, static_cast<int>(block_mm * px_mm), 0.96);
  // Between its four directions a line may stand somewhat higher than in the best of them.
  const cv::Mat1b worth_asking(heights >= 0.6F * least_height);
  const Ridge ridge = ridge_crests(tile.density, width_px, 1, worth_asking);
  cv::Mat1b weak(tile.density.size(), static_cast<unsigned char>(0));
  cv::Mat1b strong = weak.clone();
  for (int y = 0; y < weak.rows; ++y) {
    for (int x = 0; x < weak.cols; ++x) {
      const float height = ridge.height(y, x);
      if (height >= least_height && usable(y, x) != 0) {
        const double sigmas = static_cast<double>(height) / static_cast<double>(scale(y, x));
        weak(y, x) = sigmas >= link_sigmas ? 255 : 0;
        strong(y, x) = sigmas >= seed_sigmas ? 255 : 0;
      }
    }
  }
  const int least_links = static_cast<int>(knowledge.length.least_mm * px_mm * 0.8);
  std::vector<MarkCandidate> marks;
  for (const Chain& chain : chains_of(weak, strong, least_links)) {
    const double length_mm = chain.length_px / px_mm;
    const double extent_mm = std::hypot(chain.box.width, chain.box.height) / px_mm;
    if (length_mm < knowledge.length.least_mm || length_mm > knowledge.length.most_mm ||
        runs_along(chain)) {
      continue;
    }
    const double alone = alone_share(chain, weak, static_cast<int>(near_mm * px_mm));
    double height = 0.0;
    const double spread = height_spread(chain, ridge.height, height);
    MarkCandidate mark;
    mark.kind = MarkKind::fibre;
    const double uneven = uneven_sides(chain, tile, ridge);
    mark.width_mm = thread_width_mm(height, px_mm);
    if (mark.width_mm > knowledge.most_width_mm || uneven > most_uneven) {
      continue;
    }
    mark.log_odds = weighed(knowledge.alone, alone) + log_weighed(knowledge.length_mm, length_mm) +
                    weighed(knowledge.spread, spread) + weighed_beyond(knowledge.uneven, uneven) +
                    weighed_beyond(knowledge.width_mm, mark.width_mm) +
                    weighed(knowledge.unbranched, chain.unbranched);
    if (in_picture(film, tile.film(chain.box.x, chain.box.y))) {
      // Straight edges and right angles are people's work.
      mark.log_odds += weighed_beyond(knowledge.square, squareness(chain, ridge));
    }
    const PointMm begin = tile.film(chain.box.x, chain.box.y);
    const PointMm end = tile.film(chain.box.br().x, chain.box.br().y);
    mark.extent = {begin.along_mm, end.along_mm, begin.across_mm, end.across_mm};
    mark.middle = {0.5 * (begin.along_mm + end.along_mm), 0.5 * (begin.across_mm + end.across_mm)};
    mark.size_mm = extent_mm;
    mark.area_mm2 = length_mm * mark.width_mm;
    mark.contrast_density = height;
    marks.push_back(mark);
  }
  doubt_crowds(marks, knowledge.crowd_weight);
  return marks;
}

}  // namespace fogline
