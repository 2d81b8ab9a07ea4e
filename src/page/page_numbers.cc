#include "page/draw/escape.h"
#include "page/page_parts.h"
#include "words/film_words.h"
#include "words/phrases.h"
#include "words/unknown_words.h"

#include <algorithm>
#include <cmath>

namespace fogline {
namespace {

std::string cell(const Known<Quantity>& density, DensityUnits units) {
  if (!density) {
    return "<td>–</td>";
  }
  const NumberText text = text_from_density(*density, units);
  return "<td>" + text.value + (text.doubt.empty() ? "" : " <span>" + text.doubt + "</span>") +
         "</td>";
}

std::string row_name(const FrameMeasurement& frame) {
  std::string name = std::to_string(frame.number);
  if (frame.repeats_frame) {
    name += " <span class=\"small\">(" + std::to_string(*frame.repeats_frame) + " again)</span>";
  } else if (frame.cut) {
    name += " <span class=\"small\">(cut)</span>";
  } else if (frame.inferred) {
    name += " <span class=\"small\">(blank?)</span>";
  }
  return name;
}

std::string frame_row(const FrameMeasurement& frame, DensityUnits units) {
  const FrameTone& tone = frame.tone;
  return "<tr><th scope=\"row\">" + row_name(frame) + "</th>" + cell(tone.shadow, units) +
         cell(tone.middle, units) + cell(tone.highlight, units) + cell(tone.range, units) + "<td>" +
         (tone.paper_range ? text_from_number(*tone.paper_range, 1) : std::string("–")) +
         "</td></tr>\n";
}

std::string median_rows(const RollMedians& medians, DensityUnits units) {
  std::string html = "<tr class=\"sum\"><th scope=\"row\">median</th>" +
                     cell(medians.shadow, units) + cell(medians.middle, units) +
                     cell(medians.highlight, units) + cell(medians.range, units) +
                     "<td></td></tr>\n";
  if (medians.net_shadow) {
    html += "<tr class=\"sum\"><th scope=\"row\">net</th>" + cell(medians.net_shadow, units) +
            cell(medians.net_middle, units) + cell(medians.net_highlight, units) +
            "<td></td><td></td></tr>\n";
  }
  return html;
}

// A density as the page's grey or tint: share of light, encoded by IEC 61966-2-1 to a byte.
int srgb_from_density(double density) {
  const double light = std::clamp(transmittance_from_density(density), 0.0, 1.0);
  const double code =
      light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1.0 / 2.4) - 0.055;
  return static_cast<int>(std::lround(255.0 * code));
}

std::string swatch(double red, double green, double blue, const std::string& words) {
  return "<div><i style=\"background:rgb(" + std::to_string(srgb_from_density(red)) + "," +
         std::to_string(srgb_from_density(green)) + "," + std::to_string(srgb_from_density(blue)) +
         ")\"></i>" + words + "</div>\n";
}

std::string channel_part(const BaseFog& base_fog, DensityUnits units) {
  const auto& [red, green, blue] = *base_fog.channels;
  const double visual = base_fog.visual.value;
  return "<p>In this scanner's own bands: red " + sentence_html(sentence_from_density(red, units)) +
         ", green " + sentence_html(sentence_from_density(green, units)) + ", blue " +
         sentence_html(sentence_from_density(blue, units)) + ".</p>\n<div class=\"swatches\">" +
         swatch(red.value, green.value, blue.value, "clear film as measured") +
         swatch(visual, visual, visual, "a neutral of the same density") + "</div>\n";
}

std::string tint_part(const Tint& tint, DensityUnits units) {
  std::string html;
  for (const std::string& sentence : tint_sentences(tint, units)) {
    html += "<p>" + sentence_html(sentence) + "</p>\n";
  }
  return html;
}

}  // namespace

std::string clear_film_part(const ScanMeasurement& scan, DensityUnits units, bool name_file) {
  std::string html = name_file ? "<h3>" + html_escaped(scan.info.file) + "</h3>\n" : std::string();
  if (!scan.base_fog) {
    return html + "<p>Base plus fog isn't known. " + sentence_html(told_reason(scan.base_fog)) +
           "</p>\n" + tint_part(scan.tint, units);
  }
  html += tint_part(scan.tint, units) + "<p>Base plus fog is " +
          sentence_html(sentence_from_density(scan.base_fog->visual, units)) + ", read " +
          std::string(place_phrase(scan.base_fog->source));
  if (scan.base_fog->area_mm2) {
    html += " over " + text_from_number(*scan.base_fog->area_mm2, 0) + " mm²";
  }
  html += ": the film's own base, with whatever veil and dye is left in it.</p>\n";
  if (scan.base_fog->channels) {
    html += channel_part(*scan.base_fog, units);
  }
  return html;
}

std::string frame_table(const RollMeasurement& measurement, DensityUnits units) {
  std::string rows;
  for (const ScanMeasurement& scan : measurement.scans) {
    for (const FrameMeasurement& frame : scan.frames) {
      rows += frame.target ? std::string() : frame_row(frame, units);
    }
  }
  if (rows.empty()) {
    return "";
  }
  if (measurement.medians) {
    rows += median_rows(*measurement.medians, units);
  }
  return std::string("<table><caption>") +
         (units == DensityUnits::stops ? "Stops of light held back" : "Density") +
         " of each frame; <i>net</i> is the median above base plus fog; <i>paper</i> is the log "
         "exposure range that a frame asks of the paper.</caption>\n<thead><tr><th "
         "scope=\"col\">frame</th><th scope=\"col\">shadow</th><th scope=\"col\">middle</th><th "
         "scope=\"col\">highlight</th><th scope=\"col\">range</th><th "
         "scope=\"col\">paper</th></tr></thead>\n<tbody>\n" +
         rows + "</tbody></table>\n";
}

}  // namespace fogline
