#include "page/draw/plot.h"
#include "page/page_parts.h"
#include "words/evidence_words.h"
#include "words/figure_words.h"
#include "words/judgement_words.h"
#include "words/report_words.h"
#include "words/table_words.h"
#include "words/unknown_words.h"

#include <algorithm>

// Light or time: the five causes as bars of ink, each with its name and number, so that the table
// is the chart; then where contrast and light lie, each on a line with its aim.

namespace fogline {
namespace {

Element chance_bar(double probability) {
  constexpr int height = 12;
  const double share = 100.0 * std::clamp(probability, 0.0, 1.0);
  Element bar("rect");
  bar.set("class", "odd").set("width", percent(share).text()).set("height", height);
  return Element("svg").set("aria-hidden", "true").add(bar);
}

Element odds_table(const CauseProbabilities& causes) {
  Element body("tbody");
  for (const CauseChance& chance : cause_chances(causes)) {
    body.add(Element("tr")
                 .add(row_head(chance.name))
                 .add(Element("td").set("class", "bar").add(chance_bar(chance.probability)))
                 .add(Element("td").add(sentence_markup(chance_text(chance.probability)))));
  }
  Element table("table");
  table.set("class", "odds").add(Element("caption").text(odds_caption()));
  return table.add(body);
}

/// A quantity on a line of round steps, with the stretch that counts as right.
struct NumberLine {
  AxisMarks marks;
  double right_from = 0.0;
  double right_to = 0.0;
  std::string_view right_name;
  std::string_view spoken;
};

// Heights of the line, points from its top: the name of what is right, its stretch, the doubt, the
// axis with its marks and numbers.
constexpr Place name_y = points(11.0);
constexpr Stretch right_y{points(16.0), points(40.0)};
constexpr Stretch doubt_y{points(22.0), points(34.0)};
constexpr Place value_y = points(28.0);
constexpr Place axis_y_place = points(46.0);
constexpr Stretch marks_y{points(42.0), axis_y_place};
constexpr Place numbers_y = points(60.0);
constexpr double value_radius = 4.5;

Element line_drawing(const NumberLine& line_of, const Quantity& value) {
  const auto place = [&](double number) { return percent(line_of.marks.scale.held_share(number)); };
  const double low = value.lower95.value_or(value.value - value.u95);
  const double high = value.upper95.value_or(value.value + value.u95);
  Element svg("svg");
  svg.set("class", "line-of").set("role", "img").set("aria-label", line_of.spoken);
  svg.add(line("axis", {percent(0.0), percent(100.0)}, {axis_y_place, axis_y_place}));
  svg.add(axis_x(line_of.marks, {"axis", marks_y, numbers_y, 0.0}));
  svg.add(band("aim", {place(line_of.right_from), place(line_of.right_to)}, right_y));
  svg.add(label(
      "aim-word",
      {percent((place(line_of.right_from).value + place(line_of.right_to).value) / 2.0), name_y},
      line_of.right_name));
  svg.add(band("doubt", {place(low), place(high)}, doubt_y));
  return svg.add(dot("mid", value_radius, place(value.value), value_y));
}

Element number_paragraph(const NumberSentence& sentence) {
  Element paragraph("p");
  paragraph.text(sentence.before).add(Element("b").add(sentence_markup(sentence.number)));
  return paragraph.text(sentence.after);
}

Markup contrast_line(const Judgement& judgement) {
  if (!judgement.light_or_time.contrast_index) {
    return {};
  }
  const Quantity& contrast = *judgement.light_or_time.contrast_index;
  const Aim& aim = judgement.aim;
  const NumberLine line_of{{{0.2, 1.0}, 0.2, 1},
                           aim.contrast_index - aim.tolerance,
                           aim.contrast_index + aim.tolerance,
                           "aim",
                           figure_names.contrast};
  return Markup()
      .add(number_paragraph(contrast_words_of(contrast, aim)))
      .add(line_drawing(line_of, contrast));
}

Markup light_line(const LightOrTime& weighed) {
  if (!weighed.exposure_stops) {
    return {};
  }
  const NumberLine line_of{{{-3.0, 3.0}, 1.0, 0, true},
                           -weighed.latitude_stops,
                           weighed.latitude_stops,
                           "right",
                           figure_names.light};
  return Markup()
      .add(number_paragraph(light_words_of(*weighed.exposure_stops)))
      .add(line_drawing(line_of, *weighed.exposure_stops));
}

}  // namespace

Markup light_part(const RollPage& page) {
  const LightOrTime& weighed = page.record.judgement.light_or_time;
  Markup markup;
  for (const Finding* finding : findings_beside_causes(page.record)) {
    markup.add(paragraph(finding_sentence(*finding)))
        .add(list_markup(evidence_sentences(*finding)));
  }
  if (weighed.judged()) {
    Element lines("figure");
    lines.set("class", "lines").add(contrast_line(page.record.judgement));
    lines.add(light_line(weighed));
    markup.add(Element("div").set("class", "weigh").add(odds_table(*weighed.causes)).add(lines));
  } else {
    markup.add(paragraph(reason_sentence(weighed.causes.why())));
  }
  return markup.add(list_markup(evidence_sentences(weighed.evidence)))
      .add(paragraph(would_tell_sentence(weighed)));
}

}  // namespace fogline
