#include "page/html.h"

#include "page/page_parts.h"
#include "words/report_words.h"
#include "words/safety.h"
#include "words/sections.h"

#include <algorithm>

namespace fogline {
namespace {

/// What stands below a section's title.
Markup body_of(SectionId id, const RollPage& page) {
  switch (id) {
    case SectionId::verdict:
    case SectionId::tonight:
    case SectionId::next_roll:
    case SectionId::cautions:
    case SectionId::budget:
      return {};  // told in the head and foot of the page, and behind a fold of trust
    case SectionId::strip:
      return strips_part(page);
    case SectionId::frames:
      return frames_part(page);
    case SectionId::light_or_time:
      return light_part(page);
    case SectionId::curve:
      return curve_part(page);
    case SectionId::clear_film:
      return clear_film_part(page);
    case SectionId::marks:
      return marks_part(page);
    case SectionId::tonight_whole:
      return whole_tonight_part(page);
    case SectionId::baths:
      return baths_part(page);
    case SectionId::trust:
      return trust_part(page);
    case SectionId::unsure:
      return unsure_part(page);
    case SectionId::better_scanning:
      return scanning_part(page);
    case SectionId::method:
      return method_part(page);
  }
  return {};
}

/// Empty for what the head or foot holds.
Markup section_markup(const Section& section, const RollPage& page) {
  const Markup body = body_of(section.id, page);
  if (body.empty()) {
    return {};
  }
  Element element("section");
  element.set("id", section.anchor).add(Element("h2").text(section.title)).add(body);
  return Markup().add(element);
}

/// Tonight and next roll; empty where nothing is advised.
Markup todo_part(const std::vector<Section>& sections, const RollPage& page) {
  Element todo("div");
  todo.set("class", "todo");
  bool any = false;
  for (const Section& section : sections) {
    if (section.id == SectionId::tonight) {
      todo.add(tonight_part(page));
      any = true;
    } else if (section.id == SectionId::next_roll) {
      todo.add(next_roll_part(page));
      any = true;
    }
  }
  return any ? Markup().add(todo) : Markup();
}

Element footer(const RollRecord& record) {
  const Section& cautions = section_of(SectionId::cautions);
  Element footer("footer");
  footer.set("id", cautions.anchor).add(Element("h2").text(cautions.title));
  footer.add(list_markup(safety_sentences()));
  return footer.add(Element("p").text(written_by(record.tool_version)));
}

}  // namespace

std::string html_from_record(const RollRecord& record, const std::vector<PagePicture>& pictures,
                             const HtmlOptions& options) {
  RollPage page{record, pictures, mark_lists(record.measurement), options.units};
  page.pictures.resize(record.measurement.scans.size());
  const std::vector<Section> sections = sections_of(record);
  Element main("main");
  main.add(header_part(page)).add(todo_part(sections, page));
  // The evidence is set in two columns in print; what comes before it runs over the whole page.
  Element evidence("div");
  evidence.set("class", "evidence");
  bool is_evidence = false;
  for (const Section& section : sections) {
    const Markup markup = section_markup(section, page);
    if (is_evidence) {
      evidence.add(markup);
    } else {
      main.add(markup);
    }
    is_evidence = is_evidence || section.id == SectionId::strip;
  }
  main.add(evidence);
  return page_file(page_head(record.tool_version, report_title(report_name(record.measurement))),
                   Markup().add(main).add(footer(record)));
}

}  // namespace fogline
