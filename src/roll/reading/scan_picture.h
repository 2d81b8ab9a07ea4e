#pragma once

#include <fogline/base/scan_source.h>
#include <fogline/roll/scan_measurement.h>

namespace fogline {

/// A small display picture of the scan (encoded by IEC 61966-2-1), its brightest light near white.
ScanPicture scan_picture(const ScanGrid& grid);

}  // namespace fogline
