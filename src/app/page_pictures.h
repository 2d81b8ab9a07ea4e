#pragma once

#include <fogline/report/html.h>
#include <fogline/roll/roll_measurement.h>

#include <vector>

namespace fogline {

/// The scans' display pictures as JPEG for a page, 1600 pixels on the longer side at most, one a
/// scan; empty for a scan without a picture.
std::vector<PagePicture> page_pictures(const RollMeasurement& measurement);

}  // namespace fogline
