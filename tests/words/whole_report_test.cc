// All that is said of a roll, whatever its record holds: no number that is none, no brace left, no
// two blanks, nothing empty.

#include "record/invented_reports.h"
#include "record/random_record.h"
#include "said.h"
#include "words/advice_words.h"
#include "words/aim_words.h"
#include "words/bath_words.h"
#include "words/budget_words.h"
#include "words/cause_words.h"
#include "words/caution_words.h"
#include "words/curve_numbers.h"
#include "words/curve_words.h"
#include "words/evidence_words.h"
#include "words/figure_words.h"
#include "words/film_words.h"
#include "words/judgement_words.h"
#include "words/recipe.h"
#include "words/report_words.h"
#include "words/rescue_words.h"
#include "words/roll_numbers.h"
#include "words/screen_words.h"
#include "words/sections.h"
#include "words/story.h"
#include "words/table_words.h"
#include "words/unknown_words.h"
#include "words/verdict.h"

#include <algorithm>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

/// A random record whose names are as people choose them: what an odd name says isn't ours.
class PlainNames : public RandomWalker {
 public:
  using RandomWalker::RandomWalker;
  void text(std::string& value) override { value = "strip.tif"; }
};

/// What a file may lack, but no stage leaves out: the table of a curve, statements of a finding,
/// inversions of a wash by fills.
void complete(RollRecord& record) {
  if (record.measurement.sensitometry) {
    record.measurement.sensitometry->curve.mean = {-1.0, 1.0, {0.0, 0.5, 1.0}};
  }
  Judgement& judgement = record.judgement;
  for (Finding& finding : judgement.findings) {
    if (finding.statements.empty()) {
      finding.statements = {fact_of(CauseStatement::scratched)};
    }
  }
  if (judgement.advice) {
    for (BathAdvice* bath :
         {&judgement.advice->stop, &judgement.advice->fix, &judgement.advice->wash}) {
      if (bath->fills.empty()) {
        bath->fills = {5, 10, 20};
      }
    }
  }
}

RollRecord plain_random_record(std::uint64_t seed) {
  RollRecord record;
  PlainNames walker(seed);
  walker.object([&] { walk_fields(walker, record); });
  complete(record);
  return record;
}

/// Collects texts; those that may be empty are left out where they are.
class Texts {
 public:
  void add(std::string_view text) { texts_.emplace_back(text); }
  void add(const std::vector<std::string>& texts) {
    texts_.insert(texts_.end(), texts.begin(), texts.end());
  }
  void add_if_any(const std::string& text) {
    if (!text.empty()) {
      add(text);
    }
  }
  [[nodiscard]] const std::vector<std::string>& all() const { return texts_; }

 private:
  std::vector<std::string> texts_;
};

void add_scan(Texts& texts, const ScanMeasurement& scan, DensityUnits units) {
  texts.add(method_sentences(scan));
  texts.add(tint_sentences(scan.tint, units));
  texts.add(base_fog_sentence(scan, units));
  texts.add_if_any(channel_sentence(scan, units));
  texts.add(strip_name(scan));
  texts.add(scale_caption(scan, Aim{}, units, true));
  for (const Caution& caution : scan.cautions) {
    texts.add(caution_sentence(caution));
  }
  for (const Mark& mark : scan.marks) {
    texts.add(mark_contrast_text(mark, units));
    texts.add(mark_size_text(mark));
    texts.add(mark_name(mark.kind));
    texts.add(chance_text(mark.confidence));
  }
  for (const FrameMeasurement& frame : scan.frames) {
    texts.add_if_any(frame_note(frame));
  }
}

void add_curve(Texts& texts, const JudgedRoll& roll) {
  texts.add(curve_sentences(roll));
  texts.add_if_any(contrast_index_reason(roll.measurement));
  if (!roll.measurement.sensitometry) {
    return;
  }
  const Sensitometry& read = *roll.measurement.sensitometry;
  texts.add(missing_numbers(read));
  texts.add(curve_method(read));
  texts.add(curve_caption(read, roll.judgement.aim, true));
  texts.add(zones_sentence(read.placement));
  texts.add(zones_caption(read.placement));
  for (const CurveNumber& number : curve_numbers(read)) {
    texts.add(curve_number_text(*number.reading, number.decimals));
  }
  for (const StepRow& row : step_rows(read)) {
    texts.add({row.name, row.log_h, row.net_density, row.off_curve});
  }
}

void add_judgement(Texts& texts, const JudgedRoll& roll) {
  const Judgement& judgement = roll.judgement;
  texts.add(judgement_sentence(roll));
  texts.add_if_any(also_sentence(roll));
  texts.add(fog_sentences(roll));
  texts.add(belief_sentences(judgement));
  texts.add_if_any(would_tell_sentence(judgement.light_or_time));
  texts.add(evidence_sentences(judgement.light_or_time.evidence));
  texts.add(aim_source_words(judgement.aim));
  for (const Finding& finding : judgement.findings) {
    texts.add(finding_message(finding));
    texts.add(finding_sentence(finding));
    texts.add(evidence_sentences(finding));
  }
}

void add_advice(Texts& texts, const Judgement& judgement) {
  const Advice& advice = *judgement.advice;
  for (const RecipeLine& line : recipe_lines(advice)) {
    texts.add(line.name);
    texts.add(line.setting);
    texts.add_if_any(line.note);
  }
  for (const TonightStep& step : tonight_steps(advice)) {
    texts.add({step.full, step.what});
  }
  for (const RecipeReasons& part : recipe_reasons(judgement)) {
    texts.add(part.name);
    texts.add(part.sentences);
  }
}

/// All that is said of a roll.
std::vector<std::string> all_said(const JudgedRoll& roll, DensityUnits units) {
  Texts texts;
  const Verdict verdict = verdict_of(roll, units);
  texts.add({verdict.judgement, verdict.reading});
  texts.add_if_any(verdict.also);
  texts.add_if_any(verdict.trust);
  texts.add(report_eyebrow(roll));
  for (const Objection& objection : objections_of(roll)) {
    texts.add(objection.files + objection.sentence);
  }
  texts.add(unsure_sentences(roll));
  texts.add(scan_advice(roll));
  for (const RollNumber& number : roll_numbers(roll, units)) {
    texts.add({number.name, number.value});
    texts.add_if_any(number.note);
  }
  for (const Section& section : sections_of(roll)) {
    texts.add(section.title);
  }
  for (const auto& row : budget_rows(roll.measurement, units)) {
    texts.add(row);
  }
  for (const ScanMeasurement& scan : roll.measurement.scans) {
    add_scan(texts, scan, units);
  }
  const std::vector<MarkList> lists = mark_lists(roll.measurement);
  for (std::size_t i = 0; i < lists.size(); ++i) {
    texts.add(mark_sentences(roll.measurement.scans[i], lists[i]));
  }
  add_curve(texts, roll);
  add_judgement(texts, roll);
  if (roll.judgement.advice) {
    add_advice(texts, roll.judgement);
  }
  return texts.all();
}

TEST(WholeReport, IsWellSaidOfEveryInventedRoll) {
  for (const auto& [name, record] : invented::all_records()) {
    for (const DensityUnits units : {DensityUnits::density, DensityUnits::stops}) {
      EXPECT_EQ(fault_of(all_said(record, units)), "") << name;
    }
  }
}

TEST(WholeReport, IsWellSaidOfRandomRolls) {
  constexpr std::uint64_t records = 300;
  for (std::uint64_t seed = 1; seed <= records; ++seed) {
    const RollRecord record = plain_random_record(seed);
    const DensityUnits units = seed % 2 == 0 ? DensityUnits::density : DensityUnits::stops;
    ASSERT_EQ(fault_of(all_said(record, units)), "") << "seed " << seed;
  }
}

// A sweep that says little proves little.
TEST(WholeReport, OfRandomRollsSaysMuch) {
  std::size_t longest = 0;
  std::size_t with_curve = 0;
  std::size_t with_advice = 0;
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    const RollRecord record = plain_random_record(seed);
    longest = std::max(longest, all_said(record, DensityUnits::density).size());
    with_curve += record.measurement.sensitometry && record.judgement.curve ? 1U : 0U;
    with_advice += record.judgement.advice ? 1U : 0U;
  }
  EXPECT_GT(longest, 200U);
  EXPECT_GT(with_curve, 10U);
  EXPECT_GT(with_advice, 20U);
}

TEST(WholeReport, FaultsAreFound) {
  for (const char* bad : {"", "nan", "0.3 ± nan.", "(inf to 2)", "-inf stops", "a {brace", "b}",
                          "two  blanks", " begins", "ends "}) {
    EXPECT_NE(fault_of(std::string_view(bad)), "") << bad;
  }
  for (const char* good : {"finance", "infrared", "0.3 ± 0.1", "nanometre"}) {
    EXPECT_EQ(fault_of(std::string_view(good)), "") << good;
  }
}

// Advice that names a bath carries its caution to whoever reads it alone, in every invented report.
TEST(WholeReport, LeavesNoRescueBathWithoutItsCaution) {
  for (const auto& [name, record] : invented::all_records()) {
    if (!record.judgement.advice) {
      continue;
    }
    const auto& steps = record.judgement.advice->this_roll;
    const bool uses_bath = std::any_of(steps.begin(), steps.end(), [](const auto& step) {
      return bath_of(step.kind).has_value();
    });
    const bool cautions = std::any_of(steps.begin(), steps.end(),
                                      [](const auto& step) { return is_caution(step.kind); });
    EXPECT_TRUE(!uses_bath || cautions) << name;
  }
}

}  // namespace
}  // namespace fogline
