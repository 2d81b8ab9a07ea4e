#include "film/frames/frame_search.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace fogline {

namespace {

/// Neighbouring columns say the same thing: a millimetre of them counts as this many independent
/// observations.
constexpr double observations_per_mm = 0.6;
/// What a border that shows over the whole height is worth, in log units.
constexpr double border_worth = 7.0;
/// A frame must earn this much, or it is left out.
constexpr double frame_cost = 6.0;
/// Gaps: spread of the usual gap (mm), and the cost at which any gap is possible.
constexpr double gap_spread_mm = 1.5;
constexpr double any_gap_cost = 4.0;
/// Overlaps are rare, and rarer the larger.
constexpr double overlap_cost = 3.0;
constexpr double overlap_cost_per_mm = 1.0;
constexpr double greatest_overlap_mm = 4.0;
/// Beyond this gap every gap costs the same.
constexpr double near_gap_mm = 10.0;
/// Least part of a cut frame in sight, mm.
constexpr double least_visible_mm = 2.0;
/// A border is taken at the best column within this distance, mm.
constexpr double border_slack_mm = 0.25;
constexpr double length_step_mm = 0.2;
/// Stretch outside a border that must be clear, mm from it, and what a border is worth where it
/// isn't (frames that overlap have such borders).
constexpr double outside_near_mm = 0.2;
constexpr double outside_far_mm = 0.6;
constexpr double unclear_border_share = 0.3;

struct Choice {
  double score = -std::numeric_limits<double>::infinity();
  int previous = -1;
};

/// Dynamic programme for one frame length. Positions are columns of the frame's begin, offset so
/// that a frame may begin before the first column.
class Arrangement {
 public:
  Arrangement(const FrameProfile& profile, int length, double gap_mm)
      : profile_(profile),
        length_(length),
        columns_(static_cast<int>(profile.picture.size())),
        px_mm_(profile.pixels_per_mm),
        gap_mm_(gap_mm) {
    sums_.assign(profile.picture.size() + 1, 0.0);
    std::partial_sum(profile.picture.begin(), profile.picture.end(), sums_.begin() + 1);
    first_film_ = static_cast<int>(std::find(profile.film.begin(), profile.film.end(), true) -
                                   profile.film.begin());
    last_film_ =
        columns_ - static_cast<int>(std::find(profile.film.rbegin(), profile.film.rend(), true) -
                                    profile.film.rbegin());
    rises_ = widened(against_clear(profile.rises, -1));
    falls_ = widened(against_clear(profile.falls, +1));
  }

  FrameSeries solve() {
    const int visible = static_cast<int>(least_visible_mm * px_mm_);
    const int first = first_film_ - length_ + visible;
    const int last = last_film_ - visible;
    FrameSeries series;
    series.length_mm = length_ / px_mm_;
    if (last <= first) {
      return series;
    }
    const auto count = static_cast<std::size_t>(last - first);
    std::vector<Choice> best(count);
    // Best arrangement that ended well before: any gap is then as good as any other.
    std::vector<int> best_before(count, -1);
    const int near = static_cast<int>(near_gap_mm * px_mm_);
    const int overlap = static_cast<int>(greatest_overlap_mm * px_mm_);
    for (std::size_t i = 0; i < count; ++i) {
      const int begin = first + static_cast<int>(i);
      const double own = frame_score(begin);
      best[i] = {own, -1};
      for (int gap = -overlap; gap <= near; ++gap) {
        const int j = static_cast<int>(i) - length_ - gap;
        if (j < 0) {
          break;
        }
        if (j >= static_cast<int>(i)) {
          continue;
        }
        const double score = own + best[static_cast<std::size_t>(j)].score - gap_cost(gap / px_mm_);
        if (score > best[i].score) {
          best[i] = {score, j};
        }
      }
      const int far = static_cast<int>(i) - length_ - near;
      if (far >= 0 && best_before[static_cast<std::size_t>(far)] >= 0) {
        const int j = best_before[static_cast<std::size_t>(far)];
        const double score = own + best[static_cast<std::size_t>(j)].score - any_gap_cost;
        if (score > best[i].score) {
          best[i] = {score, j};
        }
      }
      const int before = i > 0 ? best_before[i - 1] : -1;
      const bool better =
          before < 0 || best[i].score > best[static_cast<std::size_t>(before)].score;
      best_before[i] = better ? static_cast<int>(i) : before;
    }
    const int end = best_before.back();
    if (end < 0 || best[static_cast<std::size_t>(end)].score <= 0.0) {
      return series;
    }
    series.score = best[static_cast<std::size_t>(end)].score;
    for (int i = end; i >= 0; i = best[static_cast<std::size_t>(i)].previous) {
      series.frames.push_back(span(first + i));
    }
    std::reverse(series.frames.begin(), series.frames.end());
    return series;
  }

 private:
  /// Borders weighed by what lies outside of them (`side` -1: before, +1: after): clear film makes
  /// a border sure; a step inside a picture is just a step.
  [[nodiscard]] std::vector<double> against_clear(const std::vector<double>& shares,
                                                  int side) const {
    const int near = static_cast<int>(outside_near_mm * px_mm_);
    const int far = std::max(near + 1, static_cast<int>(outside_far_mm * px_mm_));
    std::vector<double> result = shares;
    for (int x = 0; x < columns_; ++x) {
      double sum = 0.0;
      int count = 0;
      for (int off = near; off < far; ++off) {
        const int at = side < 0 ? x - 1 - off : x + off;
        if (at >= 0 && at < columns_ && profile_.film[static_cast<std::size_t>(at)]) {
          sum += profile_.picture[static_cast<std::size_t>(at)];
          ++count;
        }
      }
      const bool clear = count > 0 && sum < 0.0;
      result[static_cast<std::size_t>(x)] *= clear ? 1.0 : unclear_border_share;
    }
    return result;
  }

  [[nodiscard]] std::vector<double> widened(const std::vector<double>& values) const {
    const int slack = static_cast<int>(border_slack_mm * px_mm_);
    std::vector<double> result(values.size(), 0.0);
    for (int x = 0; x < columns_; ++x) {
      const int from = std::max(0, x - slack);
      const int to = std::min(columns_, x + slack + 1);
      result[static_cast<std::size_t>(x)] =
          *std::max_element(values.begin() + from, values.begin() + to);
    }
    return result;
  }

  [[nodiscard]] static double at(const std::vector<double>& values, int x) {
    return x >= 0 && x < static_cast<int>(values.size()) ? values[static_cast<std::size_t>(x)]
                                                         : 0.0;
  }

  [[nodiscard]] double frame_score(int begin) const {
    const int from = std::clamp(begin, 0, columns_);
    const int to = std::clamp(begin + length_, 0, columns_);
    const double inside =
        sums_[static_cast<std::size_t>(to)] - sums_[static_cast<std::size_t>(from)];
    return inside / px_mm_ * observations_per_mm +
           border_worth * (at(rises_, begin) + at(falls_, begin + length_)) - frame_cost;
  }

  [[nodiscard]] double gap_cost(double gap_mm) const {
    double cost = std::min(any_gap_cost, std::abs(gap_mm - gap_mm_) / gap_spread_mm);
    if (gap_mm < 0.0) {
      cost += overlap_cost - overlap_cost_per_mm * gap_mm;
    }
    return cost;
  }

  [[nodiscard]] FrameSpan span(int begin) const {
    FrameSpan result;
    result.begin_mm = profile_.along_begin_mm + begin / px_mm_;
    result.end_mm = profile_.along_begin_mm + (begin + length_) / px_mm_;
    result.begin_border = at(rises_, begin);
    result.end_border = at(falls_, begin + length_);
    return result;
  }

  const FrameProfile& profile_;
  int length_;
  int columns_;
  double px_mm_;
  double gap_mm_;
  int first_film_ = 0;
  int last_film_ = 0;
  std::vector<double> sums_;
  std::vector<double> rises_;
  std::vector<double> falls_;
};

}  // namespace

FrameSeries find_frames(const FrameProfile& profile, const std::vector<FrameKind>& kinds,
                        double gap_mm) {
  FrameSeries best;
  double best_score = 0.0;
  for (const FrameKind& kind : kinds) {
    for (double length = kind.length_mm - kind.spread_mm;
         length <= kind.length_mm + kind.spread_mm + 1e-9; length += length_step_mm) {
      const int pixels = static_cast<int>(std::lround(length * profile.pixels_per_mm));
      FrameSeries series = Arrangement(profile, pixels, gap_mm).solve();
      const double score = series.score - kind.handicap;
      if (!series.frames.empty() && score > best_score) {
        best_score = score;
        best = std::move(series);
      }
    }
  }
  return best;
}

}  // namespace fogline
