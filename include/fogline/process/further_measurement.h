#pragma once

#include <fogline/base/fact.h>

namespace fogline {

/// A further measurement that may part light from time.
enum class FurtherMeasurement {
  compare_frame_numbers,  ///< with another roll of this film, rightly developed
  scan_leader,
  scan_more_strips,
  calibrate_scanner,
  meter_walls,  ///< two metered frames on the next roll
};

template <>
std::span<const FactRow<FurtherMeasurement>> fact_rows<FurtherMeasurement>();

}  // namespace fogline
