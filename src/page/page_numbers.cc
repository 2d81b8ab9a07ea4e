#include "page/page_parts.h"
#include "words/figure_words.h"
#include "words/film_words.h"
#include "words/judgement_words.h"
#include "words/report_words.h"
#include "words/table_words.h"

#include <algorithm>
#include <cmath>

namespace fogline {
namespace {

Element cell(const Known<Quantity>& density, DensityUnits units) {
  Element element("td");
  if (!density) {
    return element.text("–");
  }
  const NumberText text = text_from_density(*density, units);
  element.text(text.value);
  return text.doubt.empty() ? element : element.text(" ").add(Element("span").text(text.doubt));
}

Element frame_row(const FrameMeasurement& frame, DensityUnits units) {
  const FrameTone& tone = frame.tone;
  Element name = row_head(std::to_string(frame.number));
  if (const std::string note = frame_note(frame); !note.empty()) {
    name.text(" ").add(Element("span").set("class", "small").text(note));
  }
  Element row("tr");
  row.add(name).add(cell(tone.shadow, units)).add(cell(tone.middle, units));
  row.add(cell(tone.highlight, units)).add(cell(tone.range, units));
  return row.add(
      Element("td").text(tone.paper_range ? text_from_number(*tone.paper_range, 1) : "–"));
}

Markup median_rows(const RollMedians& medians, DensityUnits units) {
  const Element nothing("td");
  Element median("tr");
  median.set("class", "sum").add(row_head("median"));
  median.add(cell(medians.shadow, units)).add(cell(medians.middle, units));
  median.add(cell(medians.highlight, units)).add(cell(medians.range, units)).add(nothing);
  Markup rows;
  rows.add(median);
  if (medians.net_shadow) {
    Element net("tr");
    net.set("class", "sum").add(row_head("net"));
    net.add(cell(medians.net_shadow, units)).add(cell(medians.net_middle, units));
    rows.add(net.add(cell(medians.net_highlight, units)).add(nothing).add(nothing));
  }
  return rows;
}

Element frame_table(const RollMeasurement& measurement, DensityUnits units) {
  Element body("tbody");
  for (const ScanMeasurement& scan : measurement.scans) {
    for (const FrameMeasurement& frame : scan.frames) {
      if (!frame.target) {
        body.add(frame_row(frame, units));
      }
    }
  }
  if (measurement.medians) {
    body.add(median_rows(*measurement.medians, units));
  }
  Element table("table");
  table.add(Element("caption").text(frame_table_caption(units)));
  return table.add(table_head(frame_table_head)).add(body);
}

// A density as the page's grey or tint: share of light, encoded by IEC 61966-2-1 to a byte.
int srgb_from_density(double density) {
  const double light = std::clamp(transmittance_from_density(density), 0.0, 1.0);
  const double code =
      light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1.0 / 2.4) - 0.055;
  return static_cast<int>(std::lround(255.0 * code));
}

Element swatch(double red, double green, double blue, std::string_view words) {
  const std::string color = "background:rgb(" + std::to_string(srgb_from_density(red)) + "," +
                            std::to_string(srgb_from_density(green)) + "," +
                            std::to_string(srgb_from_density(blue)) + ")";
  return Element("div").add(Element("i").set("style", color)).text(words);
}

Markup swatches(const ScanMeasurement& scan) {
  if (!scan.base_fog || !scan.base_fog->channels) {
    return {};
  }
  const auto& [red, green, blue] = *scan.base_fog->channels;
  const double visual = scan.base_fog->visual.value;
  Element pair("div");
  pair.set("class", "swatches").add(swatch(red.value, green.value, blue.value, swatch_words()));
  return Markup().add(pair.add(swatch(visual, visual, visual, neutral_words())));
}

}  // namespace

Markup clear_film_part(const RollPage& page) {
  Markup markup = paragraphs(fog_sentences(page.record));
  for (const ScanMeasurement& scan : page.measurement().scans) {
    if (page.is_of_several()) {
      markup.add(Element("h3").text(scan.info.file));
    }
    markup.add(paragraphs(tint_sentences(scan.tint, page.units)));
    markup.add(paragraph(base_fog_sentence(scan, page.units)));
    markup.add(paragraph(channel_sentence(scan, page.units))).add(swatches(scan));
  }
  return markup;
}

Markup frames_part(const RollPage& page) {
  Markup markup;
  for (std::size_t i = 0; i < page.measurement().scans.size(); ++i) {
    markup.add(scale_figure(page, i));
  }
  return markup.add(frame_table(page.measurement(), page.units));
}

}  // namespace fogline
