#pragma once

#include "command_line.h"

#include <optional>
#include <string>

namespace fogline {

/// Meaning of the texts given to options. Each throws UsageError for a text that means nothing;
/// absent stands for "auto".
DensityUnits units_from_text(const std::string& text);
std::optional<Transfer> transfer_from_text(const std::string& text);
std::optional<FilmFormat> format_from_text(const std::string& text);
double frame_mm_from_text(const std::string& text);
double contrast_index_from_text(const std::string& text);
MarkedArea area_from_text(const std::string& text);
ClearReference clear_from_text(const std::string& text);

/// Refuses what can't be meant: no scan, a scan named twice, a report over a scan, two reports in
/// one place. Throws UsageError.
void check_files(const MeasureRequest& request);

}  // namespace fogline
