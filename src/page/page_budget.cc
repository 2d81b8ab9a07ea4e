#include "page/draw/escape.h"
#include "page/page_parts.h"
#include "words/budget_words.h"

namespace fogline {

namespace {

std::string row_html(const std::vector<std::string>& cells, const char* tag, const char* scope) {
  std::string html = "<tr>";
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const bool is_head = i == 0 || std::string_view(tag) == "th";
    const std::string name = is_head ? "th" : tag;
    html += "<";
    html += name;
    if (is_head) {
      html += " scope=\"";
      html += scope;
      html += "\"";
    }
    html += ">";
    html += html_escaped(cells[i]);
    html += "</";
    html += name;
    html += ">";
  }
  return html + "</tr>\n";
}

}  // namespace

std::string budget_part(const RollMeasurement& measurement, DensityUnits units) {
  std::string rows;
  for (const std::vector<std::string>& row : budget_rows(measurement, units)) {
    rows += row_html(row, "td", "row");
  }
  if (rows.empty()) {
    return "";
  }
  return "<details><summary>Where each doubt comes from</summary>\n<p>" +
         std::string(budget_explanation()) + "</p>\n<div class=\"scroll\"><table>\n<thead>" +
         row_html(budget_head(), "th", "col") + "</thead>\n<tbody>\n" + rows +
         "</tbody></table></div>\n</details>\n";
}

}  // namespace fogline
