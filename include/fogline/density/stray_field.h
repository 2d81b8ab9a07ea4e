#pragma once

#include <array>
#include <numeric>

namespace fogline {

/// How bright a place's surroundings are for glare that reaches near, middling and far: stray light
/// over the bare light, were the scanner's share of it 1. How far a scanner's glare reaches can't
/// be told from one wedge, so all three count alike and their difference is doubt.
using StrayField = std::array<double, 3>;

constexpr StrayField even_field(double field) {
  return {field, field, field};
}

inline double mean_of(const StrayField& field) {
  return std::accumulate(field.begin(), field.end(), 0.0) / static_cast<double>(field.size());
}

}  // namespace fogline
