#pragma once

#include "words/number_text.h"

#include <fogline/process/judge_roll.h>
#include <fogline/roll/calibrate_scanner.h>

#include <array>
#include <string>
#include <string_view>

namespace fogline {

// Heads of the tables and what explains them.

inline constexpr std::array<std::string_view, 6> frame_table_head{"frame",     "shadow", "middle",
                                                                  "highlight", "range",  "paper"};
/// What the frames' table holds, of how densities are counted.
std::string frame_table_caption(DensityUnits units);
/// From what the densities of these scans are counted.
std::string_view counted_from_words(const RollMeasurement& measurement);

inline constexpr std::array<std::string_view, 5> mark_table_head{"no.", "kind", "size", "density",
                                                                 "sure"};
std::string_view mark_table_caption();

/// Over the probabilities of the five causes.
std::string_view odds_caption();

std::string_view curve_numbers_caption();
inline constexpr std::array<std::string_view, 4> exposure_table_head{
    "exposure", "log H", "net density", "off the curve"};
std::string_view exposure_table_title();
/// "Net density of each zone, the metered tone on Zone V".
std::string zones_caption(const ZonePlacement& placement);

inline constexpr std::array<std::string_view, 2> doubt_table_head{"density", "doubt"};
std::string_view doubt_table_caption();
std::string_view beyond_limit_words();

inline constexpr std::array<std::string_view, 6> step_table_head{"step", "reference",  "codes",
                                                                 "read", "difference", ""};
std::string step_table_caption(const ScannerCalibration& calibration);

}  // namespace fogline
