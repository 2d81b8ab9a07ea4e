#include "page/curve_plot.h"
#include "page/page_parts.h"
#include "words/curve_numbers.h"
#include "words/curve_words.h"
#include "words/number_text.h"
#include "words/table_words.h"

namespace fogline {

namespace {

Element numbers_table(const Sensitometry& read) {
  Element body("tbody");
  for (const CurveNumber& number : curve_numbers(read)) {
    if (*number.reading) {
      const std::string text = curve_number_text(*number.reading, number.decimals);
      body.add(
          Element("tr").add(row_head(number.name)).add(Element("td").add(sentence_markup(text))));
    }
  }
  Element table("table");
  table.set("class", "numbers").add(Element("caption").text(curve_numbers_caption()));
  return table.add(body);
}

Element exposures_table(const Sensitometry& read) {
  Element body("tbody");
  for (const StepRow& row : step_rows(read)) {
    body.add(Element("tr")
                 .add(row_head(row.name))
                 .add(Element("td").text(row.log_h))
                 .add(Element("td").text(row.net_density))
                 .add(Element("td").text(row.off_curve)));
  }
  Element fold("details");
  fold.add(Element("summary").text(exposure_table_title()));
  return fold.add(Element("table").add(table_head(exposure_table_head)).add(body));
}

Element zones_table(const ZonePlacement& placement) {
  Element head("tr");
  Element row("tr");
  for (const ZoneDensity& zone : placement.zones) {
    head.add(Element("th").set("scope", "col").text(zone_numeral(zone.zone)));
    row.add(
        Element("td").text(zone.net_density ? text_from_number(zone.net_density->value, 2) : "–"));
  }
  Element table("table");
  table.set("class", "zones").add(Element("caption").text(zones_caption(placement)));
  return table.add(Element("thead").add(head)).add(Element("tbody").add(row));
}

}  // namespace

Markup curve_part(const RollPage& page) {
  const Markup sentences = list_markup(curve_sentences(page.record));
  if (!page.measurement().sensitometry) {
    return sentences;
  }
  const Sensitometry& read = *page.measurement().sensitometry;
  Markup markup;
  markup.add(curve_figure(read, page.record.judgement.aim)).add(sentences);
  markup.add(numbers_table(read)).add(zones_table(read.placement)).add(exposures_table(read));
  return markup.add(list_markup(missing_numbers(read))).add(paragraph(curve_method(read)));
}

}  // namespace fogline
