#pragma once

#include <string_view>

namespace fogline {

/// The page's style sheet: paper and ink, both reading modes, print, from 360 px upward.
std::string_view page_style();

}  // namespace fogline
