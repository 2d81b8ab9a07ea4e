#include "terminal/text.h"

#include "terminal/budget.h"
#include "terminal/screen.h"
#include "terminal/text_judgement.h"
#include "terminal/text_layout.h"
#include "terminal/text_measurement.h"
#include "words/report_words.h"
#include "words/safety.h"
#include "words/sections.h"
#include "words/story.h"
#include "words/verdict.h"

#include <algorithm>

namespace fogline {
namespace {

void put_verdict(TextLayout& layout, const RollRecord& record, DensityUnits units) {
  const Verdict verdict = verdict_of(record, units);
  layout.paragraph(verdict.judgement);
  layout.paragraph_once(verdict.also);
  if (tells_little(record.measurement)) {
    layout.paragraph_once(verdict.trust);
  }
}

void put_unsure(TextLayout& layout, const RollRecord& record) {
  for (const std::string& sentence : unsure_sentences(record)) {
    layout.item_once('-', sentence);
  }
}

void put_better_scanning(TextLayout& layout, const RollRecord& record) {
  for (const std::string& sentence : scan_advice(record)) {
    layout.item_once('-', sentence);
  }
  layout.item('-', whole_setup_sentence());
}

void put_cautions(TextLayout& layout, const RollRecord& record) {
  if (names_a_bath(record.judgement.advice)) {
    for (const std::string_view sentence : safety_sentences()) {
      layout.item('-', sentence);
    }
  }
}

/// What stands below a section's heading.
void put_body(SectionId id, TextLayout& layout, const RollRecord& record,
              const TextOptions& options) {
  switch (id) {
    case SectionId::verdict:
      return put_verdict(layout, record, options.units);
    case SectionId::tonight:
      return put_tonight(layout, record);
    case SectionId::next_roll:
      return put_next_roll(layout, record);
    case SectionId::strip:
      return layout.paragraph_once(verdict_of(record, options.units).reading);
    case SectionId::frames:
      return put_frames(layout, record.measurement, options.units);
    case SectionId::light_or_time:
      return put_light_or_time(layout, record);
    case SectionId::curve:
      return put_curve(layout, record);
    case SectionId::clear_film:
      return put_clear_film(layout, record, options.units);
    case SectionId::marks:
      return put_marks(layout, record, options.units);
    case SectionId::tonight_whole:
      return;  // above, where each step is told in full
    case SectionId::baths:
      return put_baths(layout, record);
    case SectionId::trust:
      return put_trust(layout, record.measurement);
    case SectionId::budget:
      return options.budget ? put_budgets(layout, record.measurement, options.units) : void();
    case SectionId::unsure:
      return put_unsure(layout, record);
    case SectionId::better_scanning:
      return put_better_scanning(layout, record);
    case SectionId::method:
      return put_method(layout, record);
    case SectionId::cautions:
      return put_cautions(layout, record);
  }
}

std::string whole_text(const RollRecord& record, const TextOptions& options) {
  TextLayout layout(std::max(options.width, least_text_width), options.color);
  for (const Section& section : sections_of(record)) {
    layout.heading(section.title);
    put_body(section.id, layout, record, options);
  }
  return layout.text();
}

}  // namespace

std::string text_from_record(const RollRecord& record, const TextOptions& options) {
  if (options.full) {
    return whole_text(record, options);
  }
  std::string text = screen_text(record, options);
  if (options.budget) {
    TextLayout layout(std::max(options.width, least_text_width), options.color);
    layout.heading(section_of(SectionId::budget).title);
    put_budgets(layout, record.measurement, options.units);
    text += "\n" + layout.text();
  }
  return text;
}

}  // namespace fogline
