#include "page/calibration_page.h"

#include "page/calibration_plot.h"
#include "page/draw/shapes.h"
#include "page/page_parts.h"
#include "words/calibration_words.h"
#include "words/figure_words.h"
#include "words/report_words.h"
#include "words/table_words.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace fogline {

namespace {

/// Every so manieth step has its number in the picture.
constexpr int numbered_steps = 5;
constexpr std::array<double, 7> told_densities{0.1, 0.5, 1.0, 1.5, 2.0, 2.5, 3.0};

Markup section(std::string_view title, const Markup& body) {
  if (body.empty()) {
    return {};
  }
  return Markup().add(Element("section").add(Element("h2").text(title)).add(body));
}

bool has_place(const CalibrationStep& step) {
  return step.corners_px[2].x > step.corners_px[0].x;
}

/// A step's number at the middle of its upper edge, in shares of the picture.
Element step_number(const CalibrationStep& step, const PagePicture& picture) {
  double left = picture.width;
  double right = 0.0;
  double top = picture.height;
  for (const PointPx& corner : step.corners_px) {
    left = std::min(left, corner.x / picture.scan_px_per_pixel);
    right = std::max(right, corner.x / picture.scan_px_per_pixel);
    top = std::min(top, corner.y / picture.scan_px_per_pixel);
  }
  const std::string place = "left:" + percent(50.0 * (left + right) / picture.width).text() +
                            ";top:" + percent(100.0 * top / picture.height).text();
  Element number("i");
  return number.set("class", "m n").set("style", place).text(std::to_string(step.number));
}

Element steps_drawing(const std::vector<CalibrationStep>& steps, const PagePicture& picture) {
  PathData used(1);
  PathData left_out(1);
  for (const CalibrationStep& step : steps) {
    PathData& data = step.used ? used : left_out;
    bool is_first = true;
    for (const PointPx& corner : step.corners_px) {
      const double x = corner.x / picture.scan_px_per_pixel;
      const double y = corner.y / picture.scan_px_per_pixel;
      is_first ? data.move_to(x, y) : data.line_to(x, y);
      is_first = false;
    }
    data.close();
  }
  Element drawing("svg");
  drawing.set("viewBox", view_box({0.0, 0.0, static_cast<double>(picture.width),
                                   static_cast<double>(picture.height)},
                                  0));
  drawing.set("role", "img").set("aria-label", figure_names.steps);
  drawing.add(picture_element(picture, ""));
  drawing.add(used.empty() ? Markup() : cased_path("line k-frame", used));
  return drawing.add(left_out.empty() ? Markup() : cased_path("line k-mark", left_out));
}

/// The picture with the steps drawn over it; empty where the steps have no place in it.
Markup steps_figure(const CalibrationRun& run, const PagePicture& picture) {
  const std::vector<CalibrationStep>& steps = run.calibration.steps;
  if (!has_picture(picture) || run.pictures.size() != 1 ||
      !std::any_of(steps.begin(), steps.end(), has_place)) {
    return {};
  }
  const std::string shape =
      "--shape:" + machine_number(static_cast<double>(picture.width) / picture.height, 3);
  Element strip("div");
  strip.set("class", "strip").set("style", shape).add(steps_drawing(steps, picture));
  for (const CalibrationStep& step : steps) {
    if (step.number == steps.front().number || step.number == steps.back().number ||
        step.number % numbered_steps == 0) {
      strip.add(step_number(step, picture));
    }
  }
  Element figure("figure");
  figure.add(Element("div").set("class", "panel").add(strip));
  return Markup().add(figure.add(Element("figcaption").text(found_steps_caption())));
}

Element doubt_table(const ScannerCalibration& calibration) {
  Element body("tbody");
  for (const double density : told_densities) {
    if (density > calibration.shown_to_density) {
      continue;
    }
    Element doubt("td");
    doubt.text("± " + text_from_number(calibration_u95(calibration, density), 3));
    if (density > calibration.density_limit) {
      doubt.text(" ").add(Element("span").text(beyond_limit_words()));
    }
    body.add(Element("tr").add(row_head(text_from_number(density, 1))).add(doubt));
  }
  Element table("table");
  table.add(Element("caption").text(doubt_table_caption()));
  return table.add(table_head(doubt_table_head)).add(body);
}

std::string codes_text(const CalibrationStep& step, const ScannerCalibration& calibration) {
  const double full = calibration.bits <= 8 ? 255.0 : 65535.0;
  std::string text;
  for (std::size_t c = 0; c < static_cast<std::size_t>(calibration.channels); ++c) {
    text += c == 0 ? "" : " ";
    text += text_from_number(step.code[c] * full, 0);
  }
  return text;
}

Element step_table(const ScannerCalibration& calibration) {
  Element body("tbody");
  for (const CalibrationStep& step : calibration.steps) {
    Element row("tr");
    row.add(row_head(std::to_string(step.number)));
    for (const std::string& cell :
         {text_from_number(step.reference_density, 2), codes_text(step, calibration),
          std::isfinite(step.density) ? text_from_number(step.density, 3) : std::string("–"),
          step_difference(step), step_fate(step)}) {
      row.add(Element("td").text(cell));
    }
    body.add(row);
  }
  Element table("table");
  table.set("class", "w").add(Element("caption").text(step_table_caption(calibration)));
  table.add(table_head(step_table_head)).add(body);
  return Element("div").set("class", "scroll").add(table);
}

Element header(const ScannerCalibration& calibration, const std::string& name) {
  Element header("header");
  header.add(Element("p").set("class", "eyebrow").text(name + " · " + calibration.date));
  header.add(Element("h1").add(sentence_markup(calibration_verdict(calibration))));
  return header.add(Element("p").text(calibration_use()));
}

}  // namespace

std::string html_from_calibration(const CalibrationRun& run,
                                  const std::vector<PagePicture>& pictures) {
  const ScannerCalibration& calibration = run.calibration;
  const std::string name = calibration.source_files.empty()
                               ? std::string(nameless_scanner())
                               : short_name(calibration.source_files.front());
  const PagePicture picture = pictures.empty() ? PagePicture{} : pictures.front();
  const CalibrationTitles& titles = calibration_titles;
  Element main("main");
  main.add(header(calibration, name));
  main.add(section(titles.objections,
                   run.cautions.empty() ? paragraph(no_objection()) : cautions_list(run.cautions)));
  main.add(section(titles.picture, steps_figure(run, picture)));
  main.add(section(titles.response, Markup().add(response_plot(calibration))));
  main.add(
      section(titles.fit, Markup().add(residual_plot(calibration)).add(doubt_table(calibration))));
  main.add(section(titles.steps, Markup().add(step_table(calibration))));
  main.add(section(titles.method, list_markup(calibration_method(calibration))));
  Element footer("footer");
  footer.add(Element("p").text(written_by(calibration.tool_version)));
  return page_file(page_head(calibration.tool_version, calibration_title(name)),
                   Markup().add(main).add(footer));
}

}  // namespace fogline
