#pragma once

#include "page/html.h"

#include <fogline/roll/scan_measurement.h>

#include <vector>

namespace fogline {

/// Display pictures as JPEG for a page, 1600 pixels on the longer side at most; an empty one stays
/// empty.
std::vector<PagePicture> page_pictures(const std::vector<ScanPicture>& pictures);

}  // namespace fogline
