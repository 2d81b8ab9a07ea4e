#pragma once

#include "record/invented_curve.h"
#include "record/invented_judgement.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

// Every kind of report, invented: what must hold for reports is tried on all of them.

namespace fogline::invented {

/// A roll whose bracket gave a characteristic curve.
inline RollRecord bracket_record() {
  RollRecord bracket = record(bracket_roll());
  bracket.judgement.light_or_time =
      weigh_light_and_time(bracket.measurement, bracket.judgement.aim, {}, nullptr);
  bracket.judgement.curve = judge_curve(bracket.measurement, bracket.judgement.aim);
  bracket.judgement.advice = advice();
  return bracket;
}

/// Three scans: the second without base plus fog and with cautions of its own, the third unfit.
inline RollRecord several_record() {
  RollRecord several = short_record();
  ScanMeasurement second = scan("second.tif");
  second.base_fog.reset();
  second.reasons["base_fog"] = "No clear film is in sight.";
  second.reasons["marks"] = "Too coarse for marks.";
  second.cautions.push_back(
      {"glare", Severity::caution, "Stray light takes a tenth of what dense film holds back."});
  several.measurement.scans.push_back(std::move(second));
  several.measurement.scans.push_back(unfit_roll().scans.front());
  several.measurement.unread.push_back({"gone.tif", "gone.tif isn't there."});
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
    scan.cautions.push_back({"caution-" + number, Severity::caution, "Weighty " + number + tail});
    scan.cautions.push_back({"note-" + number, Severity::note, "Note " + number + tail});
    scan.reasons["field-" + number] = "Doubt " + number + tail;
    crowded.judgement.advice->this_roll.push_back("Step " + number + tail);
  }
  return crowded;
}

/// Nothing but a file that couldn't be read.
inline RollRecord unread_record() {
  RollMeasurement roll;
  roll.unread.push_back({"gone.tif", "gone.tif isn't there."});
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
  scan.cautions.front().message = "caution " + bad;
  scan.reasons["zero"] = "reason " + bad;
  scan.reasons["marks"] = "mark reason " + bad;
  scan.frames.front().reasons["highlight"] = "frame reason " + bad;
  record.measurement.unread.push_back({"unread file " + bad, "unread message " + bad});
  record.judgement.aim.source = "aim " + bad;
  LightOrTime& weighed = record.judgement.light_or_time;
  weighed.evidence.front() = "evidence " + bad;
  weighed.would_tell_most = "would tell " + bad;
  for (Finding& finding : record.judgement.findings) {
    finding.message = "finding " + bad;
    finding.evidence = {"finding evidence " + bad};
  }
  Advice& advice = *record.judgement.advice;
  advice.this_roll = {"step " + bad + ". And more " + bad};
  advice.development.reasons = {"recipe reason " + bad};
  return record;
}

}  // namespace fogline::invented
