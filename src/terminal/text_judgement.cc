#include "terminal/text_judgement.h"

#include "words/aim_words.h"
#include "words/columns.h"
#include "words/evidence_words.h"
#include "words/film_words.h"
#include "words/judgement_words.h"
#include "words/mark_list.h"
#include "words/recipe.h"
#include "words/safety.h"
#include "words/unknown_words.h"

#include <algorithm>
#include <cmath>

namespace fogline {
namespace {

void put_findings(TextLayout& layout, const RollRecord& record, FindingPlace place) {
  for (const Finding* finding : findings_at(record, place)) {
    layout.paragraph(finding_sentence(*finding));
    for (const std::string& sentence : evidence_sentences(*finding)) {
      layout.item('-', sentence);
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

void put_numbers(TextLayout& layout, const Judgement& judgement) {
  const LightOrTime& weighed = judgement.light_or_time;
  if (weighed.contrast_index) {
    layout.paragraph("Contrast index as believed now " +
                     sentence_from_density(*weighed.contrast_index, DensityUnits::density) +
                     "; the aim is " + text_from_number(judgement.aim.contrast_index, 2) + " ± " +
                     text_from_number(judgement.aim.tolerance, 2) + " (" +
                     aim_source_words(judgement.aim) + ").");
  }
  if (weighed.exposure_stops) {
    layout.paragraph("Light over the usual placement " +
                     sentence_from_density(*weighed.exposure_stops, DensityUnits::density) +
                     " stops (more is plus).");
  }
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
  if (!list.others.empty()) {
    layout.paragraph("And less telling: " + mark_counts(list.others) + ".");
  }
}

}  // namespace

void put_tonight(TextLayout& layout, const RollRecord& record) {
  if (!record.judgement.advice) {
    return;
  }
  const std::vector<TonightStep> steps = tonight_steps(*record.judgement.advice);
  if (steps.empty()) {
    return;
  }
  layout.heading("Do tonight");
  for (const TonightStep& step : steps) {
    layout.item('-', step.full);
  }
}

void put_next_roll(TextLayout& layout, const RollRecord& record) {
  if (!record.judgement.advice) {
    return;
  }
  layout.heading("Next roll");
  constexpr std::size_t name_width = 9;
  for (const RecipeLine& line : recipe_lines(*record.judgement.advice)) {
    const std::string text = padded(std::string(line.name), name_width) + line.setting +
                             (line.note.empty() ? "" : ", " + line.note);
    if (columns(text) + 2 <= layout.width()) {
      layout.line(text);
    } else {
      layout.item('-', std::string(line.name) + ": " + line.setting +
                           (line.note.empty() ? "" : ", " + line.note));
    }
  }
  layout.paragraph(safety_line());
}

void put_light_or_time(TextLayout& layout, const RollRecord& record) {
  const LightOrTime& weighed = record.judgement.light_or_time;
  if (record.measurement.scans.empty()) {
    return;
  }
  layout.heading("Light or time?");
  if (weighed.judged()) {
    constexpr std::size_t name_width = 19;
    constexpr std::size_t percent_width = 11;
    constexpr std::size_t widest_bar = 20;  // a column for each five in a hundred
    const std::size_t bar_width =
        std::min(widest_bar, layout.width() - name_width - percent_width - 2);
    for (const CauseChance& chance : cause_chances(*weighed.causes)) {
      const std::string line = padded(std::string(chance.name), name_width) +
                               padded(chance_text(chance.probability), percent_width) +
                               bar(chance.probability, bar_width);
      layout.line(line.substr(0, line.find_last_not_of(' ') + 1));
    }
    put_numbers(layout, record.judgement);
  } else if (const std::string reason = reason_sentence(weighed.causes.why()); !reason.empty()) {
    layout.paragraph(reason);
  }
  for (const std::string& sentence : evidence_sentences(weighed.evidence)) {
    layout.item('-', sentence);
  }
  if (weighed.would_tell_most) {
    layout.paragraph("What would tell most: " +
                     std::string(measurement_sentence(*weighed.would_tell_most)));
  }
  for (const Finding* finding : findings_at(record, FindingPlace::light_or_time)) {
    const bool stands_above = weighed.judged() || finding->evidence == weighed.evidence;
    if (!stands_above || finding->cause == Cause::weak_developer ||
        finding->cause == Cause::drift) {
      layout.paragraph(finding_sentence(*finding));
    }
  }
}

void put_marks(TextLayout& layout, const RollRecord& record, DensityUnits units) {
  const RollMeasurement& measurement = record.measurement;
  if (measurement.scans.empty()) {
    return;
  }
  layout.heading("Marks");
  put_findings(layout, record, FindingPlace::marks);
  const std::vector<MarkList> lists = mark_lists(measurement);
  const bool several = lists.size() > 1;
  for (std::size_t i = 0; i < lists.size(); ++i) {
    const ScanMeasurement& scan = measurement.scans[i];
    const std::string name = several ? scan.info.file + ": " : "";
    if (lists[i].numbered.empty()) {
      layout.paragraph(
          name + (scan.marks_limit ? unknown_sentence(*scan.marks_limit) : "No mark was found."));
      continue;
    }
    if (several) {
      layout.paragraph(scan.info.file + ":");
    }
    put_mark_list(layout, lists[i], units);
    if (scan.marks_limit) {
      layout.paragraph(unknown_sentence(*scan.marks_limit));
    }
  }
}

void put_baths(TextLayout& layout, const RollRecord& record) {
  if (!record.judgement.advice) {
    return;
  }
  const auto parts = recipe_reasons(record.judgement);
  if (parts.empty()) {
    return;
  }
  layout.heading("Your baths");
  for (const RecipeReasons& part : parts) {
    std::string text = std::string(part.name) + ":";
    for (const std::string& sentence : part.sentences) {
      text += " " + sentence;
    }
    layout.paragraph(text);
  }
}

}  // namespace fogline
