#pragma once

#include "words/mark_list.h"
#include "words/number_text.h"

#include <fogline/process/judge_roll.h>
#include <fogline/roll/calibrate_scanner.h>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace fogline {

// Sentences and titles that page and terminal share, and those that hold a report together.

/// Name of a report: the first scan's file, without folders.
std::string report_name(const RollMeasurement& measurement);
/// Name, film and date of the card; without one the name of the report.
std::string report_eyebrow(const JudgedRoll& roll);
/// Title of the page: its name, and that it is a roll's report or a scanner's calibration.
std::string report_title(const std::string& name);
std::string calibration_title(const std::string& name);
/// A file's name without its folders.
std::string short_name(const std::string& file);

/// At the end of a page.
std::string written_by(const std::string& tool_version);
/// How to use a calibration.
std::string_view calibration_use();
std::string_view no_objection();

/// Titles of a calibration's report, for page and terminal.
struct CalibrationTitles {
  std::string_view verdict = "In one breath";
  std::string_view objections = "What stands against it";
  std::string_view picture = "The steps";
  std::string_view response = "Response";
  std::string_view fit = "How well it fits";
  std::string_view steps = "Step by step";
  std::string_view method = "How it was made";
};
inline constexpr CalibrationTitles calibration_titles;
/// Where a calibration's report has no name.
std::string_view nameless_scanner();
std::string_view left_out_words();

/// Links of the page.
std::string_view all_cautions_words();
std::string_view whole_steps_words();
std::string_view reasons_words();

/// "not read": beside a file that wasn't.
std::string_view not_read_words();

/// Base plus fog of a scan and where it was read; that it isn't known, and why.
std::string base_fog_sentence(const ScanMeasurement& scan, DensityUnits units);
/// In the scanner's own bands; empty where they weren't told apart.
std::string channel_sentence(const ScanMeasurement& scan, DensityUnits units);

/// What a roll's contrast and light are believed to be, a sentence each; those that are known.
std::vector<std::string> belief_sentences(const Judgement& judgement);
/// What would tell most; empty where nothing is known to.
std::string would_tell_sentence(const LightOrTime& weighed);
/// Findings of light and time to be told beside the table of causes, which holds the rest.
std::vector<const Finding*> findings_beside_causes(const JudgedRoll& roll);

/// Net densities of all zones in one sentence.
std::string zones_sentence(const ZonePlacement& placement);

/// What can be said of a scan's marks beside their table: none, why, and those without a number.
std::vector<std::string> mark_sentences(const ScanMeasurement& scan, const MarkList& list);

/// Beside the number of a frame: that it is shown again, cut or perhaps blank; empty for most.
std::string frame_note(const FrameMeasurement& frame);

/// How to scan: the whole set-up, and its two sheets.
std::string_view whole_setup_sentence();
struct ScanSheetWords {
  std::string_view title = "How to scan so that a scan can be measured";
  std::string_view introduction =
      "Two things make a picture a measurement: light that nothing has changed between film and "
      "file, and bare light somewhere beside the film to count from.";
  std::string_view flatbed = "Flatbed or film scanner";
  std::string_view camera = "Camera over a light panel";
  std::string_view whole_flatbed = "The whole set-up of a flatbed";
  std::string_view whole_camera = "The whole set-up of a camera";
};
inline constexpr ScanSheetWords scan_sheet_words;

/// What the numbers of a report mean.
std::string_view method_explanation();
/// Which program measured.
std::string measured_by(const std::string& tool_version);

/// Where no density was told, so that there is no doubt to break up.
std::string_view no_budget_sentence();

}  // namespace fogline
