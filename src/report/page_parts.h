#pragma once

#include <fogline/report/html.h>

#include <string>
#include <string_view>
#include <vector>

// The parts of the page, each a piece of HTML.

namespace fogline {

/// A sentence escaped for the page; a value keeps its doubt on its line.
std::string sentence_html(std::string_view sentence);

std::string list_html(const std::vector<std::string>& sentences);

/// The picture of a scan with what was measured drawn over it. `index` counts the scans from 0.
std::string strip_figure(const ScanMeasurement& scan, const PagePicture& picture,
                         std::size_t index);

/// Whether a page shows the picture of a scan (so that others may point at it).
bool has_picture(const PagePicture& picture);

/// Base plus fog of a scan, in words and swatches.
std::string clear_film_part(const ScanMeasurement& scan, DensityUnits units, bool name_file);

/// Shadow, middle and highlight of a scan's frames on the density scale.
std::string scale_figure(const ScanMeasurement& scan, const PagePicture& picture, std::size_t index,
                         DensityUnits units, bool name_file);

/// The numbers behind the figures of all scans.
std::string frame_table(const RollMeasurement& measurement, DensityUnits units);

}  // namespace fogline
