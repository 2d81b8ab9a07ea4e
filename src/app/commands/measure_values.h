#pragma once

#include "words/number_text.h"

#include <fogline/base/scan_source.h>
#include <fogline/film/film_format.h>
#include <fogline/roll/measure_roll.h>

#include <optional>
#include <string>

namespace fogline {

/// Meaning of the texts given to options of `measure`. Each throws UsageError for a text that means
/// nothing; absent stands for "auto".
DensityUnits units_from_text(const std::string& text);
std::optional<Transfer> transfer_from_text(const std::string& text);
std::optional<FilmFormat> format_from_text(const std::string& text);
ClearReference clear_from_text(const std::string& text);
/// 8 to 250 millimetres.
double frame_mm_from_text(const std::string& text);
/// 0.2 to 1.5.
double contrast_index_from_text(const std::string& text);
/// "1200,300,80,80=-2": a box in pixels, and stops from the metered exposure.
MarkedArea area_from_text(const std::string& text);

}  // namespace fogline
