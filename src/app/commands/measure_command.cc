#include "app/commands/measure_command.h"

#include "app/commands/measure_checks.h"
#include "app/commands/measure_options.h"
#include "app/commands/option_words.h"
#include "app/measure.h"

namespace fogline {
namespace {

std::vector<std::string_view> description() {
  return {
      "Measures the scans of one roll, in the order given: base plus fog and its tint, shadow, "
      "middle and highlight of each frame, marks, each with its doubt. Judges whether light and "
      "development were right, and advises on this film and on the next roll; with a roll card "
      "(--card) in minutes and degrees.",
      "Reads TIFF, PNG and JPEG. Prints the report and writes it as a page; a page is replaced "
      "only if fogline wrote it. Where JSON, the table or the page goes to standard output, the "
      "printed report is left out.",
  };
}

std::vector<ExampleSpec> examples() {
  return {
      {"fogline measure strip-1.tif strip-2.tif --json roll.json",
       "One roll of two strips, and a file for other programs."},
      {"fogline measure strip.tif --card roll-12.toml --aim-contrast-index 0.55",
       "With what you noted of the roll, for a paper that wants softer negatives."},
      {"fogline measure strip.tif --scanner scanner.json --budget",
       "On a calibrated scanner; shows where each doubt comes from."},
      {"fogline measure strip.tif --transfer linear --units stops",
       "The file doesn't say that its codes are linear, you do."},
      {"fogline measure bracket.tif --card bracket.toml --csv curve.csv",
       "A roll of known exposures: its characteristic curve as a table."},
  };
}

CommandSpec spec() {
  return {
      .name = "measure",
      .summary = "measure the scans of one roll and write the report",
      .synopsis = "SCAN... [options]",
      .description = description(),
      .operands = {.takes = Takes::file, .endings = scan_endings()},
      .statuses = {{ExitStatus::done, "Done."},
                   {ExitStatus::file_failed, "A file could not be read or written."},
                   {ExitStatus::wrong_use, "Wrong use."},
                   {ExitStatus::unfit_scan, "No density can be read from some scan."}},
      .status_note =
          "If several hold, 2 goes before 1 before 3. A roll card that can't be "
          "understood is 1, and no scan is then read.",
      .examples = examples(),
      .see_also = {"calibrate", "card", "scanning"},
  };
}

}  // namespace

Command<MeasureRequest> measure_command() {
  return {.spec = spec(),
          .options = measure_options(),
          .read_operands = [](MeasureRequest& request,
                              const std::vector<std::string>& scans) { request.scans = scans; },
          .check = check_measure,
          .run = run_measure};
}

}  // namespace fogline
