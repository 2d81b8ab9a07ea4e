#include "words/sections.h"

#include "words/budget_words.h"
#include "words/curve_words.h"
#include "words/judgement_words.h"
#include "words/recipe.h"
#include "words/story.h"
#include "words/unknown_words.h"

#include <algorithm>
#include <array>

namespace fogline {
namespace {

using Rule = bool (*)(const JudgedRoll&);

bool always(const JudgedRoll& /*roll*/) {
  return true;
}

bool has_scans(const JudgedRoll& roll) {
  return !roll.measurement.scans.empty();
}

bool has_steps_tonight(const JudgedRoll& roll) {
  return roll.judgement.advice && !tonight_steps(*roll.judgement.advice).empty();
}

bool has_advice(const JudgedRoll& roll) {
  return roll.judgement.advice.has_value();
}

bool has_pictures(const JudgedRoll& roll) {
  const auto& scans = roll.measurement.scans;
  return std::any_of(scans.begin(), scans.end(), [](const ScanMeasurement& scan) {
    return std::any_of(scan.frames.begin(), scan.frames.end(),
                       [](const FrameMeasurement& frame) { return !frame.target; });
  });
}

bool has_weighed(const JudgedRoll& roll) {
  const LightOrTime& weighed = roll.judgement.light_or_time;
  return has_scans(roll) &&
         (weighed.judged() || is_told(weighed.causes.why()) || !weighed.evidence.empty() ||
          weighed.would_tell_most || !findings_at(roll, FindingPlace::light_or_time).empty());
}

bool has_curve_words(const JudgedRoll& roll) {
  return !curve_sentences(roll).empty();
}

bool has_more_tonight(const JudgedRoll& roll) {
  return roll.judgement.advice && tonight_goes_on(*roll.judgement.advice);
}

bool has_recipe_reasons(const JudgedRoll& roll) {
  return roll.judgement.advice && !recipe_reasons(roll.judgement).empty();
}

bool has_files(const JudgedRoll& roll) {
  return has_scans(roll) || !roll.measurement.unread.empty();
}

bool has_budgets(const JudgedRoll& roll) {
  return !budget_rows(roll.measurement, DensityUnits::density).empty();
}

bool has_unsure(const JudgedRoll& roll) {
  return !unsure_sentences(roll).empty();
}

struct SectionRow {
  Section section;
  Rule is_shown = nullptr;
};

constexpr std::array<SectionRow, 17> section_rows{{
    {{SectionId::verdict, "", "In one breath"}, always},
    {{SectionId::tonight, "", "Do tonight"}, has_steps_tonight},
    {{SectionId::next_roll, "", "Next roll"}, has_advice},
    {{SectionId::strip, "", "The strip"}, always},
    {{SectionId::frames, "", "Shadow and highlight"}, has_pictures},
    {{SectionId::light_or_time, "", "Light or time?"}, has_weighed},
    {{SectionId::curve, "", "The curve"}, has_curve_words},
    {{SectionId::clear_film, "", "Clear film"}, has_scans},
    {{SectionId::marks, "", "Marks"}, has_scans},
    {{SectionId::tonight_whole, "tonight", "Do tonight"}, has_more_tonight},
    {{SectionId::baths, "baths", "Your baths"}, has_recipe_reasons},
    {{SectionId::trust, "", "Can this scan be trusted?"}, has_files},
    {{SectionId::budget, "", "Where each doubt comes from"}, has_budgets},
    {{SectionId::unsure, "", "What is not sure"}, has_unsure},
    {{SectionId::better_scanning, "", "How to scan better"}, always},
    {{SectionId::method, "", "How it was measured"}, has_scans},
    {{SectionId::cautions, "cautions", "Cautions"}, always},
}};

constexpr bool rows_stand_at_their_id() {
  for (std::size_t i = 0; i < section_rows.size(); ++i) {
    if (static_cast<std::size_t>(section_rows[i].section.id) != i) {
      return false;
    }
  }
  return true;
}
static_assert(rows_stand_at_their_id());

}  // namespace

std::vector<Section> sections_of(const JudgedRoll& roll) {
  std::vector<Section> sections;
  for (const SectionRow& row : section_rows) {
    if (row.is_shown(roll)) {
      sections.push_back(row.section);
    }
  }
  if (tells_little(roll.measurement)) {
    const auto place_of = [&](SectionId id) {
      return std::find_if(sections.begin(), sections.end(),
                          [id](const Section& section) { return section.id == id; });
    };
    const auto better = place_of(SectionId::better_scanning);
    std::rotate(place_of(SectionId::strip), better, better + 1);
  }
  return sections;
}

const Section& section_of(SectionId id) {
  return section_rows.at(static_cast<std::size_t>(id)).section;
}

bool tells_little(const RollMeasurement& measurement) {
  return std::any_of(measurement.scans.begin(), measurement.scans.end(), [](const auto& scan) {
    return scan.fitness == Fitness::marks_only || scan.fitness == Fitness::unfit;
  });
}

bool tonight_goes_on(const Advice& advice) {
  const std::vector<TonightStep> steps = tonight_steps(advice);
  return steps.size() > short_list_steps ||
         std::any_of(steps.begin(), steps.end(),
                     [](const TonightStep& step) { return step.what != step.full; });
}

}  // namespace fogline
