#pragma once

#include "record/json_values.h"

#include <fogline/sensitometry/sensitometry.h>

#include <map>
#include <string>

namespace fogline {

/// Adds what was read from a characteristic curve to the contrast object, and why what is null is
/// so to `whys`. `base`: what lies under net densities.
void put_sensitometry(Json& contrast, const Sensitometry& read, double base, Whys& whys);

}  // namespace fogline
