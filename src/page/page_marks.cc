#include "page/draw/shapes.h"
#include "page/page_parts.h"
#include "words/evidence_words.h"
#include "words/figure_words.h"
#include "words/film_words.h"
#include "words/judgement_words.h"
#include "words/report_words.h"
#include "words/table_words.h"

#include <algorithm>
#include <cmath>

// Marks: cut-outs of the pictures above, all at one scale with a millimetre rule, and the table. A
// cut-out holds no line, so that nothing hides the mark; it is a window on the picture that the
// page carries already.

namespace fogline {
namespace {

constexpr std::size_t most_cutouts = 24;
/// Side of a cut-out on the page, rem.
constexpr double cutout_rem = 5.25;
/// A cut-out of fewer picture pixels is a blur.
constexpr double least_cutout_px = 22.0;
/// Shown film within a cut-out, mm: below, the grain is all there is; above, small marks are lost.
constexpr double least_cutout_mm = 1.5;
constexpr double greatest_cutout_mm = 10.0;

double picture_pixels_per_mm(const ScanMeasurement& scan, const PagePicture& picture) {
  return scan.pixels_per_mm && has_picture(picture)
             ? *scan.pixels_per_mm / picture.scan_px_per_pixel
             : 0.0;
}

/// Side of all cut-outs, mm: three quarters of the marks fit with their surround. 0: none can be.
double cutout_side_mm(const RollMeasurement& measurement, const std::vector<PagePicture>& pictures,
                      const std::vector<MarkList>& lists) {
  std::vector<double> sizes;
  double least = least_cutout_mm;
  for (std::size_t i = 0; i < lists.size(); ++i) {
    const double pixels_per_mm =
        i < pictures.size() ? picture_pixels_per_mm(measurement.scans[i], pictures[i]) : 0.0;
    if (!(pixels_per_mm > 0.0)) {
      continue;
    }
    least = lists[i].numbered.empty() ? least : std::max(least, least_cutout_px / pixels_per_mm);
    for (const NumberedMark& numbered : lists[i].numbered) {
      sizes.push_back(numbered.mark->size_mm);
    }
  }
  if (sizes.empty() || least > greatest_cutout_mm) {
    return 0.0;
  }
  const auto wide = sizes.begin() + static_cast<std::ptrdiff_t>(sizes.size() * 3 / 4);
  std::nth_element(sizes.begin(), wide, sizes.end());
  constexpr double surround = 1.8;
  return std::clamp(surround * *wide, least, greatest_cutout_mm);
}

Element cutout(const NumberedMark& numbered, const ScanMeasurement& scan,
               const PagePicture& picture, std::size_t index, double side_mm) {
  const BoxPx& box = numbered.mark->box_px;
  const double scale = picture.scan_px_per_pixel;
  const double side = side_mm * picture_pixels_per_mm(scan, picture);
  const double left = (box.x + box.width / 2.0) / scale - side / 2.0;
  const double top = (box.y + box.height / 2.0) / scale - side / 2.0;
  const bool is_part = std::max(box.width, box.height) / scale > side;
  constexpr int decimals = 2;
  Element element("div");
  element.add(window_on("#scan-" + std::to_string(index), {left, top, side, side}, decimals));
  return element.text(std::to_string(numbered.number) + (is_part ? " (part)" : ""));
}

Markup cutouts(const RollPage& page) {
  const double side_mm = cutout_side_mm(page.measurement(), page.pictures, page.marks);
  if (side_mm <= 0.0) {
    return {};
  }
  Element cuts("div");
  cuts.set("class", "cuts").set("aria-hidden", "true");
  std::size_t count = 0;
  for (std::size_t i = 0; i < page.marks.size(); ++i) {
    const ScanMeasurement& scan = page.measurement().scans[i];
    for (const NumberedMark& numbered : page.marks[i].numbered) {
      if (count < most_cutouts && has_picture(page.pictures[i]) && scan.pixels_per_mm) {
        cuts.add(cutout(numbered, scan, page.pictures[i], i, side_mm));
        ++count;
      }
    }
  }
  constexpr int decimals = 3;
  const std::string width = "width:" + machine_number(cutout_rem / side_mm, decimals) + "rem";
  Element figure("figure");
  figure.add(cuts).add(Element("div").set("class", "rule").set("style", width));
  return Markup().add(figure.add(Element("figcaption").text(cutouts_caption())));
}

Markup mark_rows(const MarkList& list, DensityUnits units) {
  Markup rows;
  for (const NumberedMark& numbered : list.numbered) {
    const Mark& mark = *numbered.mark;
    rows.add(Element("tr")
                 .add(row_head(std::to_string(numbered.number)))
                 .add(Element("td").text(mark_name(mark.kind)))
                 .add(Element("td").text(mark_size_text(mark)))
                 .add(Element("td").text(mark_contrast_text(mark, units)))
                 .add(Element("td").add(sentence_markup(chance_text(mark.confidence)))));
  }
  return rows;
}

Markup mark_table(const std::vector<MarkList>& lists, DensityUnits units) {
  Markup rows;
  for (const MarkList& list : lists) {
    rows.add(mark_rows(list, units));
  }
  if (rows.empty()) {
    return rows;
  }
  Element table("table");
  table.set("class", "marks").add(Element("caption").text(mark_table_caption()));
  return Markup().add(table.add(table_head(mark_table_head)).add(Element("tbody").add(rows)));
}

}  // namespace

Markup marks_part(const RollPage& page) {
  Markup markup;
  for (const Finding* finding : findings_at(page.record, FindingPlace::marks)) {
    markup.add(paragraph(finding_sentence(*finding)))
        .add(list_markup(evidence_sentences(*finding)));
  }
  markup.add(cutouts(page)).add(mark_table(page.marks, page.units));
  for (std::size_t i = 0; i < page.marks.size(); ++i) {
    const ScanMeasurement& scan = page.measurement().scans[i];
    const std::string name = page.is_of_several() ? scan.info.file + ": " : "";
    for (const std::string& sentence : mark_sentences(scan, page.marks[i])) {
      markup.add(Element("p").text(name).add(sentence_markup(sentence)));
    }
  }
  return markup;
}

}  // namespace fogline
