#pragma once

#include <fogline/base/quantity.h>

#include <optional>
#include <string>

namespace fogline {

/// How contrast was read. Without a target it can only be estimated from what is known of scenes.
enum class ContrastMethod { wedge, bracket, marked_areas, scene_estimate, none };

/// Contrast of a roll. What can't be told is absent and the reason says why.
struct ContrastEstimate {
  ContrastMethod method = ContrastMethod::none;
  std::optional<Quantity> contrast_index;
  std::optional<Quantity> density_range;
  std::string contrast_index_reason;
  std::string density_range_reason;
};

}  // namespace fogline
