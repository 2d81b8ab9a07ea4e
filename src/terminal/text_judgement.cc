#include "terminal/text_judgement.h"

#include "words/columns.h"
#include "words/evidence_words.h"
#include "words/film_words.h"
#include "words/judgement_words.h"
#include "words/mark_list.h"
#include "words/recipe.h"
#include "words/report_words.h"
#include "words/safety.h"
#include "words/unknown_words.h"

#include <algorithm>
#include <cmath>

namespace fogline {
namespace {

void put_findings(TextLayout& layout, const RollRecord& record, FindingPlace place) {
  for (const Finding* finding : findings_at(record, place)) {
    layout.paragraph_once(finding_sentence(*finding));
    for (const std::string& sentence : evidence_sentences(*finding)) {
      layout.item_once('-', sentence);
    }
  }
}

// A bar of signs that any terminal has, the full width for certainty.
std::string bar(double probability, std::size_t full_width) {
  const double length =
      std::round(static_cast<double>(full_width) * std::clamp(probability, 0.0, 1.0));
  std::string signs;
  signs.assign(static_cast<std::size_t>(length), '=');
  return signs;
}

std::string mark_line(const NumberedMark& numbered, DensityUnits units) {
  const Mark& mark = *numbered.mark;
  constexpr std::size_t number_width = 4;
  constexpr std::size_t name_width = 24;
  constexpr std::size_t size_width = 14;
  constexpr std::size_t contrast_width = 18;
  return padded(std::to_string(numbered.number), number_width) +
         padded(std::string(mark_name(mark.kind)), name_width) +
         padded(mark_size_text(mark), size_width) +
         padded(mark_contrast_text(mark, units), contrast_width) + chance_text(mark.confidence);
}

void put_mark_list(TextLayout& layout, const MarkList& list, DensityUnits units) {
  for (const NumberedMark& numbered : list.numbered) {
    const std::string line = mark_line(numbered, units);
    if (columns(line) + 2 <= layout.width()) {
      layout.line(line);
      continue;
    }
    const Mark& mark = *numbered.mark;
    layout.item('-', std::to_string(numbered.number) + ": " + std::string(mark_name(mark.kind)) +
                         ", " + mark_size_text(mark) + ", " + mark_contrast_text(mark, units) +
                         ", " + chance_text(mark.confidence));
  }
}

}  // namespace

void put_tonight(TextLayout& layout, const RollRecord& record) {
  for (const TonightStep& step : tonight_steps(*record.judgement.advice)) {
    layout.item('-', step.full);
  }
}

void put_next_roll(TextLayout& layout, const RollRecord& record) {
  constexpr std::size_t name_width = 9;
  for (const RecipeLine& line : recipe_lines(*record.judgement.advice)) {
    const std::string setting = line.setting + (line.note.empty() ? "" : ", " + line.note);
    const std::string text = padded(std::string(line.name), name_width) + setting;
    if (columns(text) + 2 <= layout.width()) {
      layout.line(text);
    } else {
      layout.item('-', std::string(line.name) + ": " + setting);
    }
  }
  layout.paragraph(safety_line());
}

void put_light_or_time(TextLayout& layout, const RollRecord& record) {
  const LightOrTime& weighed = record.judgement.light_or_time;
  if (weighed.judged()) {
    constexpr std::size_t name_width = 19;
    constexpr std::size_t percent_width = 11;
    constexpr std::size_t widest_bar = 20;  // a column for each five in a hundred
    const std::size_t bar_width =
        std::min(widest_bar, layout.width() - name_width - percent_width - 2);
    for (const CauseChance& chance : cause_chances(*weighed.causes)) {
      layout.line(padded(std::string(chance.name), name_width) +
                  padded(chance_text(chance.probability), percent_width) +
                  bar(chance.probability, bar_width));
    }
    for (const std::string& sentence : belief_sentences(record.judgement)) {
      layout.paragraph(sentence);
    }
  } else {
    layout.paragraph_once(reason_sentence(weighed.causes.why()));
  }
  for (const std::string& sentence : evidence_sentences(weighed.evidence)) {
    layout.item_once('-', sentence);
  }
  layout.paragraph_once(would_tell_sentence(weighed));
  for (const Finding* finding : findings_beside_causes(record)) {
    layout.paragraph_once(finding_sentence(*finding));
    for (const std::string& sentence : evidence_sentences(*finding)) {
      layout.item_once('-', sentence);
    }
  }
}

void put_marks(TextLayout& layout, const RollRecord& record, DensityUnits units) {
  const RollMeasurement& measurement = record.measurement;
  put_findings(layout, record, FindingPlace::marks);
  const std::vector<MarkList> lists = mark_lists(measurement);
  const bool several = lists.size() > 1;
  for (std::size_t i = 0; i < lists.size(); ++i) {
    const ScanMeasurement& scan = measurement.scans[i];
    if (several && !lists[i].numbered.empty()) {
      layout.paragraph(scan.info.file + ":");
    }
    put_mark_list(layout, lists[i], units);
    for (const std::string& sentence : mark_sentences(scan, lists[i])) {
      layout.paragraph_once((several ? scan.info.file + ": " : "") + sentence);
    }
  }
}

void put_baths(TextLayout& layout, const RollRecord& record) {
  for (const RecipeReasons& part : recipe_reasons(record.judgement)) {
    std::string text = std::string(part.name) + ":";
    for (const std::string& sentence : part.sentences) {
      text += " " + sentence;
    }
    layout.paragraph(text);
  }
}

}  // namespace fogline
