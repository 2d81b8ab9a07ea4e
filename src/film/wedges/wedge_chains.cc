#include "film/wedges/wedge_chains.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Tangent of the greatest turn, five degrees.
constexpr double greatest_turn = 0.0875;
/// Sizes across the row agree within this factor; off the row's line by this part of the size.
constexpr double size_factor = 1.3;
constexpr double off_line_part = 0.15;
/// Lengths along the row agree within this factor: joints between steps are shorter, dark steps
/// that can't be told apart longer.
constexpr double length_factor = 1.5;
/// Steps rise by so much in log light at least, and at most.
constexpr double least_rise = 0.008;
constexpr double greatest_rise = 1.2;
/// From one patch to the next it is at most so many times the patches' length along the row (a
/// missing step, gaps between loose strips).
constexpr double greatest_gap = 4.5;
/// A wedge spans a range of log light.
constexpr double least_range = 0.25;

/// A patch seen along the row's axis.
struct RowPatch {
  double along = 0.0;
  double across = 0.0;
  double length = 0.0;
  double size = 0.0;
  double level = 0.0;
  std::size_t index = 0;
};

std::vector<RowPatch> along_axis(const std::vector<EvenPatch>& patches, bool vertical,
                                 bool backwards) {
  std::vector<RowPatch> row;
  for (std::size_t i = 0; i < patches.size(); ++i) {
    const EvenPatch& p = patches[i];
    const double along = vertical ? p.middle.y : p.middle.x;
    row.push_back({backwards ? -along : along, vertical ? p.middle.x : p.middle.y,
                   vertical ? p.height : p.width, vertical ? p.width : p.height, p.level, i});
  }
  std::sort(row.begin(), row.end(),
            [](const RowPatch& a, const RowPatch& b) { return a.along < b.along; });
  return row;
}

bool may_follow(const RowPatch& a, const RowPatch& b) {
  const double distance = b.along - a.along;
  const double longer = std::max(a.length, b.length);
  const double rise = b.level - a.level;
  const double sizes = a.size / b.size;
  const bool alike = longer < length_factor * std::min(a.length, b.length);
  return alike && distance > 0.6 * longer && distance < greatest_gap * longer &&
         rise > least_rise && rise < greatest_rise && sizes < size_factor &&
         sizes * size_factor > 1.0 &&
         std::abs(b.across - a.across) <
             greatest_turn * distance + off_line_part * std::min(a.size, b.size);
}

/// The longest row that rises along the axis, as indices into the patches. Of two ways to a patch
/// with equal numbers the one with the nearer last step is kept.
std::vector<std::size_t> longest_row(const std::vector<RowPatch>& row) {
  std::vector<int> count(row.size(), 1);
  std::vector<double> last_gap(row.size(), INFINITY);
  std::vector<int> before(row.size(), -1);
  std::size_t best = 0;
  for (std::size_t j = 0; j < row.size(); ++j) {
    for (std::size_t i = 0; i < j; ++i) {
      if (!may_follow(row[i], row[j])) {
        continue;
      }
      const double gap = row[j].along - row[i].along;
      if (count[i] + 1 > count[j] || (count[i] + 1 == count[j] && gap < last_gap[j])) {
        count[j] = count[i] + 1;
        last_gap[j] = gap;
        before[j] = static_cast<int>(i);
      }
    }
    if (count[j] > count[best]) {
      best = j;
    }
  }
  std::vector<std::size_t> indices;
  for (int at = row.empty() ? -1 : static_cast<int>(best); at >= 0;
       at = before[static_cast<std::size_t>(at)]) {
    indices.push_back(row[static_cast<std::size_t>(at)].index);
  }
  std::reverse(indices.begin(), indices.end());
  return indices;
}

}  // namespace

std::vector<PatchChain> patch_chains(const std::vector<EvenPatch>& patches, std::size_t fewest) {
  std::vector<PatchChain> chains;
  std::vector<EvenPatch> left = patches;
  constexpr int most_chains = 6;
  while (static_cast<int>(chains.size()) < most_chains) {
    std::vector<std::size_t> longest;
    bool vertical = false;
    for (const bool v : {false, true}) {
      for (const bool backwards : {false, true}) {
        std::vector<std::size_t> row = longest_row(along_axis(left, v, backwards));
        if (row.size() > longest.size()) {
          longest = std::move(row);
          vertical = v;
        }
      }
    }
    if (longest.size() < fewest) {
      break;
    }
    PatchChain chain;
    chain.vertical = vertical;
    for (const std::size_t i : longest) {
      chain.patches.push_back(left[i]);
    }
    const double range = chain.patches.back().level - chain.patches.front().level;
    if (range > least_range) {
      chains.push_back(chain);
    }
    std::sort(longest.rbegin(), longest.rend());
    for (const std::size_t i : longest) {
      left.erase(left.begin() + static_cast<std::ptrdiff_t>(i));
    }
  }
  return chains;
}

}  // namespace fogline
