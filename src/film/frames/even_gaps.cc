#include "film/frames/even_gaps.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace fogline {

namespace {

/// Share of the height over which both borders show: a dark place in a picture may hide a fifth.
constexpr double border_share = 0.8;
/// Cameras leave 1 to 3 mm, worn ones down to this, and up to three times as much.
constexpr double least_gap_mm = 0.5;
constexpr double greatest_gap_mm = 6.0;
/// Spread over the height of what is even (log light); a smooth course of the lamp across is less.
constexpr double even_scatter = 0.06;
/// Light that falls off by so much more than the perforations tell (log light) is still one lamp.
constexpr double greatest_excess = 0.35;

bool is_even(const cv::Mat1f& pieces, int column) {
  std::vector<double> values;
  for (int p = 0; p < pieces.rows; ++p) {
    values.push_back(static_cast<double>(pieces(p, column)));
  }
  const LocationScale seen = robust_location(values);
  return seen.scale < even_scatter && seen.location < greatest_excess;
}

/// Borders that show over the height one after another, first to last; border x lies between the
/// columns x - 1 and x.
struct BorderRun {
  int first = 0;
  int last = 0;
};

std::vector<BorderRun> border_runs(const std::vector<double>& shares) {
  std::vector<BorderRun> runs;
  const int columns = static_cast<int>(shares.size());
  for (int x = 0; x < columns; ++x) {
    if (shares[static_cast<std::size_t>(x)] < border_share) {
      continue;
    }
    if (!runs.empty() && runs.back().last == x - 1) {
      runs.back().last = x;
    } else {
      runs.push_back({x, x});
    }
  }
  return runs;
}

}  // namespace

void take_even_stripes_for_gaps(FrameProfile& profile, const cv::Mat1f& pieces) {
  const double least = least_gap_mm * profile.pixels_per_mm;
  const double most = greatest_gap_mm * profile.pixels_per_mm;
  for (const BorderRun& into : border_runs(profile.falls)) {
    for (const BorderRun& out_of : border_runs(profile.rises)) {
      const int length = out_of.first - into.last;
      if (length < least || length > most) {
        continue;
      }
      bool even = true;
      for (int x = into.last; x < out_of.first && even; ++x) {
        even = profile.film[static_cast<std::size_t>(x)] && is_even(pieces, x);
      }
      if (even) {
        // The borders are blurred: their middles bound the stripe.
        std::fill(profile.picture.begin() + (into.first + into.last + 1) / 2,
                  profile.picture.begin() + (out_of.first + out_of.last) / 2,
                  FrameProfile::clear_ratio);
      }
    }
  }
}

}  // namespace fogline
