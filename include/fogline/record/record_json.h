#pragma once

#include <fogline/record/roll_record.h>

#include <string>

namespace fogline {

/// The record as JSON text (UTF-8, indented, closed by a line feed), exactly by
/// `calibration/report.schema.json`. Densities are rounded to four decimals, a hundredth of what a
/// densitometer shows. A value that isn't known, or isn't finite, is null, and the object that
/// holds it says why in `reasons`. Numbers don't depend on the locale; bytes of file names that
/// aren't UTF-8 are replaced.
std::string json_from_record(const RollRecord& record);

}  // namespace fogline
