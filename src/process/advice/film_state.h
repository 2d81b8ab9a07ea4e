#pragma once

#include "process/belief/light_signs.h"

#include <fogline/process/finding.h>

#include <vector>

namespace fogline {

/// Film is in sight, and no picture on it: nothing to part light from time by.
bool shows_no_picture(const LightSigns& signs);

/// `not-exposed` and `not-developed` where film without pictures is in sight. What the factory or
/// daylight printed on it (edge print, leader) shows that developer was at work; on film without
/// either both stay open.
std::vector<Finding> film_state_findings(const LightSigns& signs);

}  // namespace fogline
