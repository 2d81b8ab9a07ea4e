#pragma once

#include "process/belief/weigh_light_and_time.h"
#include "record/invented_curve.h"
#include "record/invented_judgement.h"
#include "tables/shipped_knowledge.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

// Every kind of report, invented: what must hold for reports is tried on all of them.

namespace fogline::invented {

/// A roll whose bracket gave a characteristic curve.
inline RollRecord bracket_record() {
  RollRecord bracket = record(bracket_roll());
  bracket.judgement.light_or_time = weigh_light_and_time(bracket.measurement, bracket.judgement.aim,
                                                         shipped_knowledge().population, nullptr);
  bracket.judgement.curve = judge_curve(bracket.measurement, bracket.judgement.aim);
  bracket.judgement.advice = advice();
  return bracket;
}

inline UnreadFile gone_file() {
  return {"gone.tif", {Refusal::cant_open, {}, {"No such file or directory"}, {}}};
}

/// Facts that hold their sentence themselves.
inline Caution caution(Severity severity, std::string told) {
  return {severity, {CautionKind::grey_scan, {}, {}, std::move(told)}};
}
inline WhyUnknown reason(std::string told) {
  return {Unknown::not_told, {}, {}, std::move(told)};
}
inline Fact<RescueStep> step_tonight(std::string told) {
  return {RescueStep::scan_again, {}, {}, std::move(told)};
}

/// Three scans: the second without base plus fog and with cautions of its own, the third unfit.
inline RollRecord several_record() {
  RollRecord several = short_record();
  ScanMeasurement second = scan("second.tif");
  second.base_fog = Unknown::no_zero_for_base;
  second.marks_limit = fact_of(Unknown::marks_too_coarse, {12.0});
  second.cautions.push_back({Severity::caution, fact_of(CautionKind::glare_strong)});
  several.measurement.scans.push_back(std::move(second));
  several.measurement.scans.push_back(unfit_roll().scans.front());
  several.measurement.unread.push_back(gone_file());
  return several;
}

/// Cautions, doubts, steps and marks beyond all measure.
inline RollRecord crowded_record() {
  RollRecord crowded = short_record();
  ScanMeasurement& scan = crowded.measurement.scans.front();
  const std::string tail =
      " is told here at such length that it takes two lines of a terminal, and a word more.";
  for (int i = 0; i < 20; ++i) {
    const std::string number = std::to_string(i);
    scan.cautions.push_back(caution(Severity::caution, "Weighty " + number + tail));
    scan.cautions.push_back(caution(Severity::note, "Note " + number + tail));
    crowded.judgement.advice->this_roll.push_back(step_tonight("Step " + number + tail));
  }
  scan.veiling_glare = reason("Doubt 0" + tail);
  scan.density_limit = reason("Doubt 1" + tail);
  scan.exposed_wedge_steps = reason("Doubt 2" + tail);
  scan.marks_limit = reason("Doubt 3" + tail);
  return crowded;
}

/// Nothing but a file that couldn't be read.
inline RollRecord unread_record() {
  RollMeasurement roll;
  roll.unread.push_back(gone_file());
  return record(std::move(roll));
}

struct NamedRecord {
  std::string_view name;
  RollRecord record;
};

inline std::vector<NamedRecord> all_records() {
  return {{"short", short_record()},
          {"normal", normal_record()},
          {"undecided", undecided_record()},
          {"bracket", bracket_record()},
          {"several", several_record()},
          {"crowded", crowded_record()},
          {"unfit", record(unfit_roll())},
          {"unread", unread_record()},
          {"nothing", record(RollMeasurement{})},
          {"unjudged", record(roll())}};
}

/// What no name may do to a page.
inline constexpr std::string_view hostile = "<x y=\"1\">&'</x>";

/// The short roll with `hostile` in every text that comes from outside.
inline RollRecord hostile_record() {
  RollRecord record = short_record();
  const std::string bad(hostile);
  record.tool_version = bad;
  record.card->name = "card name " + bad;
  record.card->film = "card film " + bad;
  record.card->developed = "card date " + bad;
  ScanMeasurement& scan = record.measurement.scans.front();
  scan.info.file = "file " + bad;
  scan.cautions.front() = caution(Severity::caution, "caution " + bad);
  scan.veiling_glare = reason("reason " + bad);
  scan.marks_limit = reason("mark reason " + bad);
  scan.frames.front().tone.highlight = reason("frame reason " + bad);
  record.measurement.unread.push_back(
      {"unread file " + bad, {Refusal::undecodable, {}, {"unread message " + bad}, {}}});
  record.judgement.aim.unknown_like = "aim " + bad;
  record.judgement.light_or_time.evidence.front().told = "evidence " + bad;
  for (Finding& finding : record.judgement.findings) {
    finding.statements.front().told = "finding " + bad;
    finding.evidence = {{Evidence::shadow, {}, {}, "finding evidence " + bad}};
  }
  Advice& advice = *record.judgement.advice;
  advice.this_roll = {step_tonight("step " + bad)};
  advice.development.reasons.front().told = "recipe reason " + bad;
  return record;
}

}  // namespace fogline::invented
