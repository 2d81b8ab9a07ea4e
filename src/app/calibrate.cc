#include "calibrate.h"

#include "app/commands/option_words.h"
#include "files/write_file.h"
#include "output_files.h"
#include "page/calibration_page.h"
#include "page_pictures.h"
#include "progress_line.h"
#include "terminal.h"
#include "terminal/calibration_text.h"

#include <fogline/base/refusal.h>
#include <fogline/roll/calibrate_scanner.h>
#include <fogline/tables/read_tables.h>

#include <chrono>
#include <ctime>
#include <memory>

namespace fogline {
namespace {

std::string today() {
  const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm local{};
  localtime_r(&now, &local);
  char text[11];
  std::strftime(text, sizeof text, "%Y-%m-%d", &local);
  return text;
}

CalibrationRun calibrated(const CalibrateRequest& request) {
  std::vector<std::unique_ptr<ScanSource>> opened;
  std::vector<ScanSource*> sources;
  for (const std::string& file : request.scans) {
    opened.push_back(open_scan(file, request.open));
    sources.push_back(opened.back().get());
  }
  const std::shared_ptr<const ScanKnowledge> knowledge = shipped_scan_knowledge();
  ProgressLine progress(request.scans.front());
  if (request.layers) {
    return calibrate_from_layers(sources, *request.layers, request.layer_density, request.device,
                                 *knowledge, progress.callback());
  }
  if (request.bracket_s) {
    return calibrate_from_bracket(sources, *request.bracket_s, request.bracket_doubt_stops,
                                  request.device, progress.callback());
  }
  WedgeReference reference = request.steps ? *request.steps : read_wedge_reference(*request.wedge);
  reference.first_in_sight = request.first_step;
  return calibrate_from_wedge(*sources.front(), reference, request.device, *knowledge,
                              progress.callback());
}

std::string page_path(const CalibrateRequest& request) {
  return request.html.value_or(
      default_page_path(request.output == "-" ? request.scans.front() : request.output));
}

void put_page(const CalibrateRequest& request, const CalibrationRun& run) {
  const std::string page = html_from_calibration(run, page_pictures(run.pictures));
  const std::string path = page_path(request);
  if (path == "-") {
    write_standard_output(page);
  } else {
    write_page(path, page);
  }
}

}  // namespace

ExitStatus run_calibrate(const CalibrateRequest& request) {
  CalibrationRun run = calibrated(request);
  run.calibration.date = request.date.value_or(today());
  run.calibration.tool_version = FOGLINE_VERSION;
  const std::string file = scanner_file_text(run.calibration);
  if (request.output == "-") {
    write_standard_output(file);
  } else {
    check_replaces_scanner_file(request.output);
    write_file(request.output, file);
    run.calibration = read_scanner_file(request.output);
  }
  const bool prints = request.output != "-" && request.html != "-";
  if (prints) {
    TextOptions options;
    options.color = standard_output_wants_color();
    options.width = standard_output_width();
    write_standard_output(text_from_calibration(run, options));
  }
  if (request.html != no_page) {
    put_page(request, run);
  }
  return ExitStatus::done;
}

}  // namespace fogline
