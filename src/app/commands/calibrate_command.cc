#include "app/commands/calibrate_command.h"

#include "app/calibrate.h"
#include "app/commands/calibrate_checks.h"
#include "app/commands/calibrate_options.h"
#include "app/commands/option_words.h"

namespace fogline {
namespace {

std::vector<std::string_view> description() {
  return {
      "Learns what a scanner (or a camera over a light panel) makes of light, so that densities "
      "are measured as a densitometer would: from a step wedge whose densities are known, from "
      "layers of one grey filter, or from shutter times. Finds the steps by itself, either way "
      "round, and says which don't fit.",
      "Scan the wedge with bare light beside it below the top code and, if you can, a strip of "
      "black card; then scan film with the very same settings (resolution is free).",
      "REF.csv holds a line a step: step,density and, if known, its u95 (what covers the true "
      "density 95 times in 100).",
  };
}

std::vector<ExampleSpec> examples() {
  return {
      {"fogline calibrate wedge.tif --wedge wedge.csv --device flatbed --output scanner.json",
       "A wedge with its certificate."},
      {"fogline measure strip.tif --scanner scanner.json", "From then on."},
      {"fogline calibrate wedge.tif --steps 21x0.15 --output scanner.json",
       "A wedge of which only the design is known."},
      {"fogline calibrate l0.tif l1.tif l2.tif l3.tif --layers 0,1,2,3 --layer-density 0.30 "
       "--output scanner.json",
       "No wedge, but a sheet of grey gel cut to pieces."},
      {"fogline calibrate a.tif b.tif c.tif d.tif --bracket 1/8,1/15,1/30,1/60 --device camera "
       "--output camera.json",
       "A camera over a light panel."},
  };
}

CommandSpec spec() {
  return {
      .name = "calibrate",
      .summary = "learn a scanner or camera from a step wedge",
      .synopsis = "SCAN... --output SCANNER.json [options]",
      .description = description(),
      .operands = {.takes = Takes::file, .endings = scan_endings()},
      .statuses = {{ExitStatus::done, "Done."},
                   {ExitStatus::file_failed,
                    "A file could not be read or written, or shows no wedge that fits its "
                    "reference."},
                   {ExitStatus::wrong_use, "Wrong use."}},
      .examples = examples(),
      .see_also = {"measure", "scanning"},
  };
}

}  // namespace

Command<CalibrateRequest> calibrate_command() {
  return {.spec = spec(),
          .options = calibrate_options(),
          .read_operands = [](CalibrateRequest& request,
                              const std::vector<std::string>& scans) { request.scans = scans; },
          .check = check_calibrate,
          .run = run_calibrate};
}

}  // namespace fogline
