#include "page/draw/escape.h"
#include "page/page_parts.h"
#include "words/evidence_words.h"
#include "words/film_words.h"
#include "words/judgement_words.h"
#include "words/unknown_words.h"

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

std::string cutout(const NumberedMark& numbered, const ScanMeasurement& scan,
                   const PagePicture& picture, std::size_t index, double side_mm) {
  const BoxPx& box = numbered.mark->box_px;
  const double scale = picture.scan_px_per_pixel;
  const double side = side_mm * picture_pixels_per_mm(scan, picture);
  const double left = (box.x + box.width / 2.0) / scale - side / 2.0;
  const double top = (box.y + box.height / 2.0) / scale - side / 2.0;
  const bool part = std::max(box.width, box.height) / scale > side;
  return "<div><svg viewBox=\"" + machine_number(left, 2) + " " + machine_number(top, 2) + " " +
         machine_number(side, 2) + " " + machine_number(side, 2) + "\"><use href=\"#scan-" +
         std::to_string(index) + "\"/></svg>" + std::to_string(numbered.number) +
         (part ? " (part)" : "") + "</div>\n";
}

std::string cutouts(const RollMeasurement& measurement, const std::vector<PagePicture>& pictures,
                    const std::vector<MarkList>& lists) {
  const double side_mm = cutout_side_mm(measurement, pictures, lists);
  if (side_mm <= 0.0) {
    return "";
  }
  std::string html;
  std::size_t count = 0;
  for (std::size_t i = 0; i < lists.size() && i < pictures.size(); ++i) {
    for (const NumberedMark& numbered : lists[i].numbered) {
      if (count < most_cutouts && has_picture(pictures[i]) && measurement.scans[i].pixels_per_mm) {
        html += cutout(numbered, measurement.scans[i], pictures[i], i, side_mm);
        ++count;
      }
    }
  }
  const std::string mm_rem = machine_number(cutout_rem / side_mm, 3);
  return "<figure><div class=\"cuts\" aria-hidden=\"true\">\n" + html +
         "</div>\n<div class=\"rule\" style=\"width:" + mm_rem +
         "rem\"></div>\n<figcaption>All at one scale; the line is 1 mm of film.</figcaption>"
         "</figure>\n";
}

std::string mark_rows(const MarkList& list, DensityUnits units) {
  std::string html;
  for (const NumberedMark& numbered : list.numbered) {
    const Mark& mark = *numbered.mark;
    html += "<tr><th scope=\"row\">" + std::to_string(numbered.number) + "</th><td>" +
            std::string(mark_name(mark.kind)) + "</td><td>" + mark_size_text(mark) + "</td><td>" +
            mark_contrast_text(mark, units) + "</td><td>" +
            sentence_html(chance_text(mark.confidence)) + "</td></tr>\n";
  }
  return html;
}

std::string mark_table(const std::vector<MarkList>& lists, DensityUnits units) {
  std::string rows;
  for (const MarkList& list : lists) {
    rows += mark_rows(list, units);
  }
  if (rows.empty()) {
    return "";
  }
  return "<table class=\"marks\"><caption>Marks by their number on the strip. Size is the greatest "
         "extent; density is that of the mark against its near surround, rim of a ring, middle of "
         "a disc; sure is the chance that it is there and of this kind.</caption>\n<thead><tr><th "
         "scope=\"col\">no.</th><th scope=\"col\">kind</th><th scope=\"col\">size</th><th "
         "scope=\"col\">density</th><th scope=\"col\">sure</th></tr></thead>\n<tbody>\n" +
         rows + "</tbody></table>\n";
}

std::string marks_of_scan(const ScanMeasurement& scan, const MarkList& list, bool name_file) {
  const std::string name = name_file ? html_escaped(scan.info.file) + ": " : std::string();
  std::string html;
  if (list.numbered.empty() && !scan.marks_limit) {
    html += "<p>" + name + (name_file ? "no mark was found." : "No mark was found.") + "</p>\n";
  }
  if (scan.marks_limit) {
    html += "<p>" + name + sentence_html(unknown_sentence(*scan.marks_limit)) + "</p>\n";
  }
  if (!list.others.empty()) {
    html += "<p>" + name + (name_file ? "less" : "Less") +
            " telling, outlined without a number: " + mark_counts(list.others) + ".</p>\n";
  }
  return html;
}

}  // namespace

std::string marks_part(const RollRecord& record, const std::vector<PagePicture>& pictures,
                       const std::vector<MarkList>& lists, DensityUnits units) {
  const RollMeasurement& measurement = record.measurement;
  std::string html;
  for (const Finding* finding : findings_at(record, FindingPlace::marks)) {
    html += "<p>" + sentence_html(finding_sentence(*finding)) + "</p>\n" +
            list_html(evidence_sentences(*finding));
  }
  html += cutouts(measurement, pictures, lists) + mark_table(lists, units);
  for (std::size_t i = 0; i < lists.size(); ++i) {
    html += marks_of_scan(measurement.scans[i], lists[i], lists.size() > 1);
  }
  return html;
}

}  // namespace fogline
