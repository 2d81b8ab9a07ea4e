#include "page/curve_plot.h"
#include "page/draw/escape.h"
#include "page/page_parts.h"
#include "words/curve_numbers.h"
#include "words/curve_words.h"
#include "words/number_text.h"

namespace fogline {

namespace {

std::string numbers_table(const Sensitometry& read) {
  std::string html = "<table class=\"numbers\">\n<caption>Read from the curve</caption>\n<tbody>\n";
  for (const CurveNumber& number : curve_numbers(read)) {
    if (*number.reading) {
      html += "<tr><th scope=\"row\">" + html_escaped(number.name) + "</th><td>" +
              sentence_html(curve_number_text(*number.reading, number.decimals)) + "</td></tr>\n";
    }
  }
  return html + "</tbody>\n</table>\n";
}

std::string steps_table(const Sensitometry& read) {
  std::string html =
      "<details><summary>The exposures</summary>\n<table><thead><tr><th scope=\"col\">exposure</th>"
      "<th scope=\"col\">log H</th><th scope=\"col\">net density</th><th scope=\"col\">off the "
      "curve</th></tr></thead>\n<tbody>\n";
  for (const StepRow& row : step_rows(read)) {
    html += "<tr><th scope=\"row\">" + html_escaped(row.name) + "</th><td>" + row.log_h +
            "</td><td>" + row.net_density + "</td><td>" + row.off_curve + "</td></tr>\n";
  }
  return html + "</tbody></table></details>\n";
}

std::string zones_table(const ZonePlacement& placement) {
  std::string head;
  std::string row;
  for (const ZoneDensity& zone : placement.zones) {
    head += "<th scope=\"col\">" + zone_numeral(zone.zone) + "</th>";
    row += "<td>" +
           (zone.net_density ? text_from_number(zone.net_density->value, 2) : std::string("–")) +
           "</td>";
  }
  return "<table class=\"zones\">\n<caption>Net density of each zone, " +
         std::string(placement.metered ? "the metered tone on Zone V"
                                       : "Zone I laid on the speed point") +
         "</caption>\n<thead><tr>" + head + "</tr></thead>\n<tbody><tr>" + row +
         "</tr></tbody>\n</table>\n";
}

}  // namespace

std::string curve_part(const RollRecord& record) {
  std::string html = list_html(curve_sentences(record));
  if (!record.measurement.sensitometry) {
    return html;
  }
  const Sensitometry& read = *record.measurement.sensitometry;
  html = curve_figure(read, record.judgement.aim) + html + numbers_table(read) +
         zones_table(read.placement) + steps_table(read) + list_html(missing_numbers(read));
  return html + "<p>" + sentence_html(curve_method(read)) + "</p>\n";
}

}  // namespace fogline
