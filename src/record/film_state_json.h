#pragma once

#include "record/json_values.h"

#include <fogline/marks/mark.h>
#include <fogline/tint/tint.h>

#include <vector>

namespace fogline {

/// The schema's `tint`.
Json json_from_tint(const Tint& tint);
/// The schema's `marks`.
Json json_from_marks(const std::vector<Mark>& marks);

}  // namespace fogline
