#pragma once

#include <fogline/base/quantity.h>
#include <fogline/sensitometry/film_tones.h>

#include <vector>

namespace fogline {

/// Estimates contrast from the density ranges of a roll's frames and what is known of scenes:
/// contrast index = median range / usual log exposure range between the 2nd and 98th percentile of
/// a picture. Subjects span 2.2 log units between extreme spots with a standard deviation of 0.28
/// (Jones & Condit, JOSA 31 (1941); read in a secondary text); the lens's flare takes about 0.4 of
/// it (common practice, no source) and percentiles of area another part. Frames of one roll share
/// their weather, so the doubt doesn't shrink with their number. Absent where fewer than two whole
/// frames have a range, or where a range is only a lower bound for most.
ContrastEstimate estimate_contrast(const std::vector<Quantity>& ranges);

}  // namespace fogline
