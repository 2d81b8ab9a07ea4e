#pragma once

#include "page/html.h"
#include "words/mark_list.h"

#include <string>
#include <string_view>
#include <vector>

// The parts of the page, each a piece of HTML.

namespace fogline {

/// A sentence escaped for the page; a value keeps its doubt on its line.
std::string sentence_html(std::string_view sentence);

std::string list_html(const std::vector<std::string>& sentences);

/// Name of the page: the first scan's file, without folders.
std::string page_title(const RollMeasurement& measurement);

/// Whether some scan tells no densities, so that scanning better comes first.
bool tells_little(const RollMeasurement& measurement);

/// Verdict, tonight and next roll: what the first screen of a phone holds.
std::string head_part(const RollRecord& record, DensityUnits units);

/// The cautions in a line, with the way to all of them: stands wherever baths are named.
std::string cautions_link();

/// Whether tonight's steps are longer than the first screen's short list.
bool tonight_goes_on(const Advice& advice);
/// Tonight's steps in full; empty where the short list says all.
std::string tonight_part(const RollRecord& record);
/// Why the next roll's recipe is what it is.
std::string baths_part(const RollRecord& record);

/// Probabilities of light and time as bars, contrast and light on their lines, evidence.
std::string light_part(const RollRecord& record);

/// The characteristic curve, what is read from it, and its zones; empty without a target.
std::string curve_part(const RollRecord& record);

/// Cut-outs and table of the marks.
std::string marks_part(const RollRecord& record, const std::vector<PagePicture>& pictures,
                       const std::vector<MarkList>& lists, DensityUnits units);

/// The picture of a scan with what was measured drawn over it. `index` counts the scans from 0.
std::string strip_figure(const ScanMeasurement& scan, const PagePicture& picture, std::size_t index,
                         const MarkList& marks);

/// Whether a page shows the picture of a scan (so that others may point at it).
bool has_picture(const PagePicture& picture);

/// Base plus fog of a scan and its tint, in words and swatches.
std::string clear_film_part(const ScanMeasurement& scan, DensityUnits units, bool name_file);

/// Shadow, middle and highlight of a scan's frames on the density scale, beside the aim.
std::string scale_figure(const ScanMeasurement& scan, const PagePicture& picture, std::size_t index,
                         const Aim& aim, DensityUnits units, bool name_file);

/// Where the doubt of each number comes from, as a table behind a fold; empty where no scan tells a
/// budget.
std::string budget_part(const RollMeasurement& measurement, DensityUnits units);

/// The numbers behind the figures of all scans.
std::string frame_table(const RollMeasurement& measurement, DensityUnits units);

}  // namespace fogline
