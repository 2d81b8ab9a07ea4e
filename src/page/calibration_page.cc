#include "page/calibration_page.h"

#include "page/calibration_plot.h"
#include "page/draw/escape.h"
#include "page/page_parts.h"
#include "page/page_style.h"
#include "words/calibration_words.h"
#include "words/caution_words.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace fogline {

namespace {

/// Every so manieth step has its number in the picture.
constexpr int numbered_steps = 5;
constexpr std::array<double, 7> told_densities{0.1, 0.5, 1.0, 1.5, 2.0, 2.5, 3.0};

std::string section(std::string_view title, const std::string& body) {
  return body.empty() ? body
                      : "<section>\n<h2>" + std::string(title) + "</h2>\n" + body + "</section>\n";
}

std::string short_name(const std::string& file) {
  return file.substr(file.rfind('/') + 1);  // npos + 1 is 0: a name without folders
}

bool has_place(const CalibrationStep& step) {
  return step.corners_px[2].x > step.corners_px[0].x;
}

/// The picture with the steps drawn over it; empty where the steps have no place in it.
std::string steps_figure(const CalibrationRun& run, const PagePicture& picture) {
  const std::vector<CalibrationStep>& steps = run.calibration.steps;
  if (!has_picture(picture) || run.pictures.size() != 1 ||
      !std::any_of(steps.begin(), steps.end(), has_place)) {
    return "";
  }
  std::string data;
  std::string outlier_data;
  std::string numbers;
  const double scale = picture.scan_px_per_pixel;
  for (const CalibrationStep& step : steps) {
    std::string& path = step.used ? data : outlier_data;
    char command = 'M';
    double left = picture.width;
    double right = 0.0;
    double top = picture.height;
    for (const PointPx& corner : step.corners_px) {
      path +=
          command + machine_number(corner.x / scale, 1) + " " + machine_number(corner.y / scale, 1);
      command = 'L';
      left = std::min(left, corner.x / scale);
      right = std::max(right, corner.x / scale);
      top = std::min(top, corner.y / scale);
    }
    path += "Z";
    const bool told = step.number == steps.front().number || step.number == steps.back().number ||
                      step.number % numbered_steps == 0;
    if (!told) {
      continue;
    }
    numbers += "<i class=\"m t n\" style=\"left:" +
               machine_number(50.0 * (left + right) / picture.width, 2) +
               "%;top:" + machine_number(100.0 * top / picture.height, 2) + "%\">" +
               std::to_string(step.number) + "</i>";
  }
  const auto paths = [](const std::string& d, const char* css_class) {
    return d.empty() ? std::string()
                     : "<path class=\"casing\" d=\"" + d + "\"/><path class=\"line " + css_class +
                           "\" d=\"" + d + "\"/>\n";
  };
  return "<figure><div class=\"panel\"><div class=\"strip\" style=\"--shape:" +
         machine_number(static_cast<double>(picture.width) / picture.height, 3) +
         "\"><svg viewBox=\"0 0 " + std::to_string(picture.width) + " " +
         std::to_string(picture.height) +
         "\" role=\"img\" aria-label=\"The steps found\"><image width=\"" +
         std::to_string(picture.width) + "\" height=\"" + std::to_string(picture.height) +
         "\" href=\"data:" + picture.media_type + ";base64," + base64_from_bytes(picture.bytes) +
         "\"/>\n" + paths(data, "k-frame") + paths(outlier_data, "k-mark") + "</svg>" + numbers +
         "</div></div><figcaption>Where each step was read; orange: left out.</figcaption>"
         "</figure>\n";
}

std::string doubt_table(const ScannerCalibration& calibration) {
  std::string rows;
  for (const double density : told_densities) {
    if (density > calibration.shown_to_density) {
      continue;
    }
    const double u95 = calibration_u95(calibration, density);
    const bool beyond = density > calibration.density_limit;
    rows += "<tr><th scope=\"row\">" + text_from_number(density, 1) + "</th><td>± " +
            text_from_number(u95, 3) + (beyond ? " <span>beyond the limit</span>" : "") +
            "</td></tr>\n";
  }
  return "<table><caption>What the calibration leaves unsure, 95 of 100; zero, evenness and noise "
         "of the film's own scan come on top.</caption>\n<thead><tr><th scope=\"col\">density</th>"
         "<th scope=\"col\">doubt</th></tr></thead>\n<tbody>\n" +
         rows + "</tbody></table>\n";
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

std::string step_table(const ScannerCalibration& calibration) {
  std::string rows;
  for (const CalibrationStep& step : calibration.steps) {
    rows += "<tr><th scope=\"row\">" + std::to_string(step.number) + "</th><td>" +
            text_from_number(step.reference_density, 2) + "</td><td>" +
            codes_text(step, calibration) + "</td><td>" +
            (std::isfinite(step.density) ? text_from_number(step.density, 3) : std::string("–")) +
            "</td><td>" + step_difference(step) + "</td><td>" + html_escaped(step_fate(step)) +
            "</td></tr>\n";
  }
  return "<div class=\"scroll\"><table class=\"w\"><caption>Codes are the middle ones of each "
         "area" +
         std::string(calibration.channels == 1 ? "" : ", red green blue") +
         ".</caption>\n<thead><tr><th scope=\"col\">step</th><th scope=\"col\">reference</th><th "
         "scope=\"col\">codes</th><th scope=\"col\">read</th><th "
         "scope=\"col\">difference</th><th scope=\"col\"></th></tr></thead>\n<tbody>\n" +
         rows + "</tbody></table></div>\n";
}

std::string cautions_html(const std::vector<Caution>& cautions) {
  if (cautions.empty()) {
    return "<p>Nothing stands against it.</p>\n";
  }
  std::string html = "<ul>\n";
  for (const Caution& caution : cautions) {
    html += std::string(caution.severity == Severity::note ? "<li>" : "<li class=\"weighty\">") +
            sentence_html(caution_sentence(caution)) + "</li>\n";
  }
  return html + "</ul>\n";
}

}  // namespace

std::string html_from_calibration(const CalibrationRun& run,
                                  const std::vector<PagePicture>& pictures) {
  const ScannerCalibration& calibration = run.calibration;
  const std::string title =
      calibration.source_files.empty() ? "scanner" : short_name(calibration.source_files.front());
  const PagePicture picture = pictures.empty() ? PagePicture{} : pictures.front();
  return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n" +
         std::string(page_marker) + html_escaped(calibration.tool_version) +
         "\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>" +
         html_escaped(title) + " – scanner calibration</title>\n<style>" +
         std::string(page_style()) +
         "</style>\n</head>\n<body>\n<main>\n<header>\n<p "
         "class=\"eyebrow\">" +
         html_escaped(title) + " · " + html_escaped(calibration.date) + "</p>\n<h1>" +
         sentence_html(calibration_verdict(calibration)) +
         "</h1>\n<p>Use it: fogline measure strip.tif --scanner SCANNER.json</p>\n</header>\n" +
         section("What stands against it", cautions_html(run.cautions)) +
         section("The steps", steps_figure(run, picture)) +
         section("Response", response_plot(calibration)) +
         section("How well it fits", residual_plot(calibration) + doubt_table(calibration)) +
         section("Step by step", step_table(calibration)) +
         section("How it was made", list_html(calibration_method(calibration))) +
         "</main>\n<footer>\n<p>Written by fogline " + html_escaped(calibration.tool_version) +
         ". This page holds everything it shows: no script, no network.</p>\n</footer>\n</body>\n"
         "</html>\n";
}

}  // namespace fogline
