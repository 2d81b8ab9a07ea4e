#include "page/page_parts.h"
#include "words/recipe.h"
#include "words/report_words.h"
#include "words/sections.h"
#include "words/verdict.h"

#include <algorithm>

// The first screen: verdict, tonight, next roll. It must fit a phone of 360 by 640 points, so steps
// are told by what is done here and in full further down.

namespace fogline {
namespace {

Element title_with_link(SectionId id, bool has_link, SectionId to, std::string_view words) {
  Element title("h2");
  title.text(section_of(id).title);
  if (has_link) {
    title.text(" ").add(link_to(to, words));
  }
  return title;
}

}  // namespace

Element header_part(const RollPage& page) {
  const Verdict verdict = verdict_of(page.record, page.units);
  Element header("header");
  header.add(Element("p").set("class", "eyebrow").text(report_eyebrow(page.record)));
  header.add(Element("h1").add(sentence_markup(verdict.judgement)));
  header.add(paragraph(verdict.also));
  return header.add(tells_little(page.measurement()) ? paragraph(verdict.trust) : Markup());
}

Element tonight_part(const RollPage& page) {
  const Advice& advice = *page.record.judgement.advice;
  const std::vector<TonightStep> steps = tonight_steps(advice);
  Element list("ol");
  for (std::size_t i = 0; i < std::min(steps.size(), short_list_steps); ++i) {
    list.add(Element("li").add(sentence_markup(steps[i].what)));
  }
  Element part("div");
  part.set("class", "tonight");
  part.add(title_with_link(SectionId::tonight, tonight_goes_on(advice), SectionId::tonight_whole,
                           whole_steps_words()));
  return part.add(list);
}

Element next_roll_part(const RollPage& page) {
  Element lines("dl");
  for (const RecipeLine& line : recipe_lines(*page.record.judgement.advice)) {
    Element setting("dd");
    setting.add(sentence_markup(line.setting));
    if (!line.note.empty()) {
      setting.text(" ").add(Element("span").add(sentence_markup(line.note)));
    }
    Element row("div");
    row.set("class", line.name).add(Element("dt").text(line.name)).add(setting);
    lines.add(row);
  }
  Element part("div");
  part.set("class", "next");
  part.add(title_with_link(SectionId::next_roll, true, SectionId::baths, reasons_words()));
  return part.add(lines).add(safety_paragraph());
}

}  // namespace fogline
