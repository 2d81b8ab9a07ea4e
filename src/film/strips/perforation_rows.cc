#include "film/strips/perforation_rows.h"

#include "film/film_layout.h"
#include "numerics/least_squares.h"
#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

namespace fogline {

namespace {

/// Pitch over length of a hole; blur and the level of the cut make the length err by a sixth.
constexpr double pitch_over_length = film_135::pitch_mm / film_135::hole_along_mm;
constexpr double least_pitch_ratio = pitch_over_length * 0.83;
constexpr double greatest_pitch_ratio = pitch_over_length * 1.2;
/// A row may lie askew by 6 degrees (3 of turn, the rest perspective), tangent.
constexpr double greatest_slope = 0.105;
/// Sizes of neighbours agree so far (ratio).
constexpr double size_ratio = 1.3;
/// Neighbouring pitches agree so far (share): perspective changes them slowly.
constexpr double pitch_agreement = 0.05;
/// How far a hole may lie off the place that its row predicts (share of the pitch).
constexpr double place_agreement = 0.09;
/// So many holes may be missing within a row (torn, covered by tape or dust).
constexpr int greatest_skip = 8;
constexpr std::size_t fewest_holes = 3;

class RowBuilder {
 public:
  RowBuilder(const std::vector<BrightSpot>& spots, bool along_x) : spots_(spots) {
    row_.along_x = along_x;
    order_.resize(spots.size());
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
      return row_.along(spots_[a]) < row_.along(spots_[b]);
    });
    used_.assign(spots.size(), false);
    successor_.resize(spots.size());
    predecessor_cost_.assign(spots.size(), INFINITY);
    predecessor_.resize(spots.size());
    link();
  }

  std::vector<HoleRow> build() {
    std::vector<std::vector<std::size_t>> chains = this->chains();
    std::sort(chains.begin(), chains.end(),
              [](const auto& a, const auto& b) { return a.size() > b.size(); });
    std::vector<HoleRow> rows;
    for (const auto& chain : chains) {
      const bool taken = std::any_of(chain.begin(), chain.end(), [&](auto i) { return used_[i]; });
      if (taken || chain.size() < fewest_holes) {
        continue;
      }
      rows.push_back(grow(chain));
    }
    return rows;
  }

 private:
  /// Cost of b following a, or nothing where it can't.
  [[nodiscard]] std::optional<double> link_cost(const BrightSpot& a, const BrightSpot& b) const {
    const double distance = row_.along(b) - row_.along(a);
    const double length = 0.5 * (row_.along_size(a) + row_.along_size(b));
    const double ratio = distance / length;
    const double offset = std::abs(row_.across(b) - row_.across(a));
    const auto unlike = [](double p, double q) { return std::max(p, q) / std::min(p, q); };
    const double along_unlike = unlike(row_.along_size(a), row_.along_size(b));
    const double across_unlike = unlike(row_.across_size(a), row_.across_size(b));
    if (ratio < least_pitch_ratio || ratio > greatest_pitch_ratio ||
        offset > greatest_slope * distance || along_unlike > size_ratio ||
        across_unlike > size_ratio || a.at_border || b.at_border) {
      return std::nullopt;
    }
    return std::abs(ratio - pitch_over_length) + offset / distance + (along_unlike - 1.0) +
           (across_unlike - 1.0);
  }

  void link() {
    for (std::size_t i = 0; i < order_.size(); ++i) {
      const BrightSpot& a = spots_[order_[i]];
      double best = INFINITY;
      const double reach = greatest_pitch_ratio * size_ratio * row_.along_size(a);
      for (std::size_t j = i + 1; j < order_.size(); ++j) {
        const BrightSpot& b = spots_[order_[j]];
        if (row_.along(b) - row_.along(a) > reach) {
          break;
        }
        const std::optional<double> cost = link_cost(a, b);
        if (cost && *cost < best) {
          best = *cost;
          successor_[order_[i]] = order_[j];
        }
        if (cost && *cost < predecessor_cost_[order_[j]]) {
          predecessor_cost_[order_[j]] = *cost;
          predecessor_[order_[j]] = order_[i];
        }
      }
    }
  }

  /// Runs of mutual best neighbours with a steady pitch.
  std::vector<std::vector<std::size_t>> chains() const {
    std::vector<bool> seen(spots_.size(), false);
    std::vector<std::vector<std::size_t>> result;
    for (const std::size_t start : order_) {
      if (seen[start]) {
        continue;
      }
      std::vector<std::size_t> chain{start};
      seen[start] = true;
      double pitch = 0.0;
      for (std::size_t at = start; successor_[at];) {
        const std::size_t next = *successor_[at];
        if (seen[next] || predecessor_[next] != at) {
          break;
        }
        const double step = row_.along(spots_[next]) - row_.along(spots_[at]);
        if (pitch > 0.0 && std::abs(step - pitch) > pitch_agreement * pitch) {
          break;
        }
        pitch = step;
        seen[next] = true;
        chain.push_back(next);
        at = next;
      }
      result.push_back(std::move(chain));
    }
    return result;
  }

  HoleRow grow(const std::vector<std::size_t>& chain) {
    HoleRow row;
    row.along_x = row_.along_x;
    for (std::size_t i = 0; i < chain.size(); ++i) {
      row.holes.push_back({static_cast<int>(i), spots_[chain[i]]});
      used_[chain[i]] = true;
    }
    extend(row, +1);
    extend(row, -1);
    refit_pitch(row);
    return row;
  }

  /// Adds spots at predicted places beyond the row's end, skipping missing ones.
  void extend(HoleRow& row, int direction) {
    for (int skip = 1; skip <= greatest_skip;) {
      refit_pitch(row);
      const RowHole& end = direction > 0 ? row.holes.back() : row.holes.front();
      const double along = row.along(end.spot) + direction * skip * row.pitch_px;
      const double across = row.across_at(along);
      const double slack = place_agreement * row.pitch_px * (1.0 + 0.2 * skip);
      std::optional<std::size_t> best;
      for (std::size_t i = 0; i < spots_.size(); ++i) {
        const BrightSpot& spot = spots_[i];
        const double off = std::hypot(row.along(spot) - along, row.across(spot) - across);
        const double unlike = row.along_size(spot) / row.along_size(end.spot);
        if (!used_[i] && !spot.at_border && off < slack && unlike < size_ratio &&
            unlike > 1.0 / size_ratio) {
          best = i;
          break;
        }
      }
      if (!best) {
        ++skip;
        continue;
      }
      used_[*best] = true;
      const RowHole hole{end.index + direction * skip, spots_[*best]};
      row.holes.insert(direction > 0 ? row.holes.end() : row.holes.begin(), hole);
      skip = 1;
    }
  }

  static void refit_pitch(HoleRow& row) {
    std::vector<double> steps;
    for (std::size_t i = 1; i < row.holes.size(); ++i) {
      const int apart = row.holes[i].index - row.holes[i - 1].index;
      steps.push_back((row.along(row.holes[i].spot) - row.along(row.holes[i - 1].spot)) / apart);
    }
    row.pitch_px = median(steps);
  }

  const std::vector<BrightSpot>& spots_;
  HoleRow row_;
  std::vector<std::size_t> order_;
  std::vector<bool> used_;
  std::vector<std::optional<std::size_t>> successor_;
  std::vector<std::optional<std::size_t>> predecessor_;
  std::vector<double> predecessor_cost_;
};

}  // namespace

double HoleRow::across_at(double along_px) const {
  LinearProblem problem;
  problem.coefficients = 2;
  for (const RowHole& hole : holes) {
    problem.add(std::vector<double>{1.0, along(hole.spot)}, across(hole.spot));
  }
  const LinearFit fit = fit_robust(problem, 0.5);
  return fit.solved ? fit.predict(std::vector<double>{1.0, along_px}) : across(holes.front().spot);
}

double HoleRow::median_across_size() const {
  std::vector<double> sizes;
  sizes.reserve(holes.size());
  for (const RowHole& hole : holes) {
    sizes.push_back(across_size(hole.spot));
  }
  return median(sizes);
}

std::vector<HoleRow> hole_rows(const std::vector<BrightSpot>& spots, bool along_x) {
  return RowBuilder(spots, along_x).build();
}

}  // namespace fogline
