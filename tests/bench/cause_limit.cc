#include "cause_limit.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace bench {

namespace {

/// Enough to give shares to 0.03, few enough to stay near.
constexpr std::size_t neighbours = 250;
/// Distances at which rolls differ as much as readings and subjects make them: shadows bend in the
/// toe, so the square root is measured.
constexpr double root_shadow_unit = 0.05;
constexpr double highlight_unit = 0.10;
constexpr double print_unit = 0.15;
constexpr double leader_unit = 0.4;

double distance(const RollReading& a, const RollReading& b) {
  const double shadow = (std::sqrt(a.shadow) - std::sqrt(b.shadow)) / root_shadow_unit;
  const double highlight = (a.highlight - b.highlight) / highlight_unit;
  const double print = (a.edge_print - b.edge_print) / print_unit;
  const double leader = a.leader ? (*a.leader - *b.leader) / leader_unit : 0.0;
  return shadow * shadow + highlight * highlight + print * print + leader * leader;
}

}  // namespace

CauseLimit::CauseLimit(std::vector<RollReading> draws) : draws_(std::move(draws)) {
  for (const RollReading& draw : draws_) {
    truths_.push_back(true_cause(draw.faults));
  }
}

CauseShares CauseLimit::causes(const RollReading& reading) const {
  std::vector<std::pair<double, std::size_t>> order;
  for (std::size_t i = 0; i < draws_.size(); ++i) {
    if (draws_[i].leader.has_value() == reading.leader.has_value()) {
      order.emplace_back(distance(reading, draws_[i]), truths_[i]);
    }
  }
  const std::size_t count = std::min(neighbours, order.size());
  std::nth_element(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(count) - 1,
                   order.end());
  CauseShares shares{};
  for (std::size_t i = 0; i < count; ++i) {
    shares[order[i].second] += 1.0 / static_cast<double>(count);
  }
  return shares;
}

}  // namespace bench
