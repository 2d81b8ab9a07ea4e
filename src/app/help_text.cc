#include "help_text.h"

#include "command_line.h"
#include "help_card.h"
#include "terminal.h"
#include "terminal/scan_sheet.h"

namespace fogline {
namespace {

constexpr const char* overview =
    R"(fogline reads scans of developed black-and-white film as a densitometer would.

Use:
  fogline measure SCAN...      measure the scans of one roll and write the report
  fogline calibrate SCAN...    learn a scanner or camera from a step wedge
  fogline help measure         the options of measure
  fogline help calibrate       the options of calibrate
  fogline help card            what a roll card holds, with an example
  fogline help scanning        how to scan so that a scan can be measured
  fogline --version

fogline measure strip.tif says whether light and development were right, what to
do with this film tonight and what to change for the next roll, and writes
strip.report.html beside the scan.
)";

constexpr const char* measure_head = R"(fogline measure SCAN... [options]

Measures the scans of one roll, in the order given: base plus fog and its tint,
shadow, middle and highlight of each frame, marks, each with its doubt. Judges
whether light and development were right, and advises on this film and on the
next roll; with a roll card (--card) in minutes and degrees. Reads TIFF, PNG and
JPEG. Prints the report and writes it as a page; a page is replaced only if
fogline wrote it. Where JSON or the page goes to standard output, the printed
report is left out.

)";

constexpr const char* measure_foot = R"(
Exit status: 0 done; 1 a file could not be read or written; 2 wrong use; 3 no
density can be read from some scan. If several hold, 2 goes before 1 before 3.
A roll card that can't be understood is 1, and no scan is then read.

  fogline measure strip-1.tif strip-2.tif --json roll.json
  fogline measure strip.tif --card roll-12.toml --aim-contrast-index 0.55
  fogline measure strip.tif --transfer linear --units stops
  fogline measure bracket.tif --card bracket.toml --csv curve.csv
)";

constexpr const char* calibrate_head = R"(fogline calibrate SCAN... --output SCANNER.json [options]

Learns what a scanner (or a camera over a light panel) makes of light, so that
densities are measured as a densitometer would: from a step wedge whose
densities are known, from layers of one grey filter, or from shutter times.
Finds the steps by itself, either way round, and says which don't fit. Scan the
wedge with bare light beside it below the top code and, if you can, a strip of
black card; then scan film with the very same settings (resolution is free):

  fogline calibrate wedge.tif --wedge wedge.csv --output scanner.json
  fogline measure strip.tif --scanner scanner.json

wedge.csv holds a line a step: step,density and, if known, its u95.

)";

constexpr const char* calibrate_foot = R"(
Exit status: 0 done; 1 a file could not be read or written, or shows no wedge
that fits its reference; 2 wrong use.

  fogline calibrate wedge.tif --steps 21x0.15 --output scanner.json
  fogline calibrate l0.tif l1.tif l2.tif l3.tif --layers 0,1,2,3 \
      --layer-density 0.30 --output scanner.json
  fogline calibrate a.tif b.tif c.tif d.tif --bracket 1/8,1/15,1/30,1/60 \
      --output camera.json
)";

}  // namespace

std::string help_text(const std::string& topic) {
  if (topic == "measure") {
    return measure_head + measure_options_help() + measure_foot;
  }
  if (topic == "calibrate") {
    return calibrate_head + calibrate_options_help() + calibrate_foot;
  }
  if (topic == "card") {
    return card_help();
  }
  if (topic == "scanning") {
    return scan_sheet_text(standard_output_width());
  }
  return overview;
}

}  // namespace fogline
