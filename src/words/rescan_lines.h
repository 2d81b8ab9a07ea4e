#pragma once

#include <string_view>
#include <vector>

namespace fogline {

/// How to set up a flatbed or film scanner so that its scans can be measured, a line each.
std::vector<std::string_view> flatbed_lines();

/// How to set up a camera over a light panel, a line each.
std::vector<std::string_view> camera_lines();

}  // namespace fogline
