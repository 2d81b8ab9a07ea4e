#pragma once

#include "page/draw/element.h"
#include "page/html.h"
#include "words/mark_list.h"
#include "words/sections.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

// The parts of the page.

namespace fogline {

/// All that the sections of one roll's page are made from.
struct RollPage {
  const RollRecord& record;
  /// One for each scan, in order; empty ones where there is no picture.
  std::vector<PagePicture> pictures;
  /// One for each scan, in order.
  std::vector<MarkList> marks;
  DensityUnits units = DensityUnits::density;

  [[nodiscard]] const RollMeasurement& measurement() const { return record.measurement; }
  /// Names of files are told where there are several.
  [[nodiscard]] bool is_of_several() const { return record.measurement.scans.size() > 1; }
};

/// A sentence whose values keep their doubt and their unit on their line.
Markup sentence_markup(std::string_view sentence);
/// It in a paragraph; nothing where it is empty.
Markup paragraph(std::string_view sentence);
/// Paragraphs, one a sentence.
Markup paragraphs(const std::vector<std::string>& sentences);
/// A list; nothing where no sentence is.
Markup list_markup(const std::vector<std::string>& sentences);
Markup list_markup(const std::vector<std::string_view>& sentences);
/// Cautions as a list, the weighty ones marked.
Markup cautions_list(const std::vector<Caution>& cautions);
/// The way to a section that has an anchor.
Element link_to(SectionId id, std::string_view words);
/// The cautions for baths in a line, with the way to all of them: stands wherever baths are named.
Element safety_paragraph();

/// The head of a table, a cell a name.
Element table_head(std::span<const std::string_view> names);
/// The cell that names a row.
Element row_head(std::string_view name);

/// The begin of every page: its head, with the marker, title and style.
Element page_head(const std::string& tool_version, const std::string& title);
/// The whole file: language, head, body.
std::string page_file(const Element& head, const Markup& body);

/// Whether a page shows the picture of a scan (so that others may point at it).
bool has_picture(const PagePicture& picture);
/// The picture itself, as an element of a drawing; `id` may be empty.
Element picture_element(const PagePicture& picture, std::string_view id);

/// Verdict, tonight and next roll: what the first screen of a phone holds.
Element header_part(const RollPage& page);
Element tonight_part(const RollPage& page);
Element next_roll_part(const RollPage& page);

// The other sections, below their titles.
Markup strips_part(const RollPage& page);
Markup frames_part(const RollPage& page);
Markup light_part(const RollPage& page);
Markup curve_part(const RollPage& page);
Markup clear_film_part(const RollPage& page);
Markup marks_part(const RollPage& page);
Markup whole_tonight_part(const RollPage& page);
Markup baths_part(const RollPage& page);
Markup trust_part(const RollPage& page);
Markup unsure_part(const RollPage& page);
Markup scanning_part(const RollPage& page);
Markup method_part(const RollPage& page);

/// The picture of a scan with what was measured drawn over it. `index` counts the scans from 0.
Markup strip_figure(const RollPage& page, std::size_t index);
/// Shadow, middle and highlight of a scan's frames on the density scale, beside the aim.
Markup scale_figure(const RollPage& page, std::size_t index);
/// Where the doubt of each number comes from, as a table behind a fold; empty where no scan tells a
/// budget.
Markup budget_part(const RollMeasurement& measurement, DensityUnits units);

}  // namespace fogline
