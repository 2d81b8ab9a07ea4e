#pragma once

#include <fogline/base/known.h>
#include <fogline/base/quantity.h>

namespace fogline {

/// How contrast was read. Without a target it can only be estimated from what is known of scenes.
enum class ContrastMethod { wedge, bracket, marked_areas, scene_estimate, none };

/// Contrast of a roll.
struct ContrastEstimate {
  ContrastMethod method = ContrastMethod::none;
  Known<Quantity> contrast_index;
  Known<Quantity> density_range;

  friend bool operator==(const ContrastEstimate&, const ContrastEstimate&) = default;
};

}  // namespace fogline
