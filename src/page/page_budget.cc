#include "page/page_parts.h"
#include "words/budget_words.h"
#include "words/sections.h"

namespace fogline {

Markup budget_part(const RollMeasurement& measurement, DensityUnits units) {
  const std::vector<std::vector<std::string>> rows = budget_rows(measurement, units);
  if (rows.empty()) {
    return {};
  }
  Element body("tbody");
  for (const std::vector<std::string>& cells : rows) {
    Element row("tr");
    for (std::size_t i = 0; i < cells.size(); ++i) {
      row.add(i == 0 ? row_head(cells[i]) : Element("td").text(cells[i]));
    }
    body.add(row);
  }
  const std::vector<std::string> head = budget_head();
  const std::vector<std::string_view> names(head.begin(), head.end());
  Element fold("details");
  fold.add(Element("summary").text(section_of(SectionId::budget).title));
  fold.add(Element("p").text(budget_explanation()));
  fold.add(
      Element("div").set("class", "scroll").add(Element("table").add(table_head(names)).add(body)));
  return Markup().add(fold);
}

}  // namespace fogline
