#include "measure.h"

#include "app/commands/option_words.h"
#include "files/write_file.h"
#include "output_files.h"
#include "page/html.h"
#include "page_pictures.h"
#include "progress_line.h"
#include "record/curve_csv.h"
#include "terminal.h"
#include "terminal/text.h"

#include <fogline/base/refusal.h>
#include <fogline/process/roll_card.h>
#include <fogline/record/record_json.h>
#include <fogline/tables/read_tables.h>
#include <fogline/words/refusal_words.h>

#include <algorithm>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <utility>

namespace fogline {
namespace {

std::unique_ptr<ScanSource> open_file(const std::string& file, const OpenOptions& options) {
  std::error_code error;
  if (std::filesystem::is_directory(file, error)) {
    throw FileError(file, Refusal::scan_is_folder);
  }
  return open_scan(file, options);
}

/// A path on the card counts from the card's own folder.
WedgeReference reference_of_card(const std::string& card_path, const std::string& reference) {
  const std::filesystem::path path(reference);
  return read_wedge_reference(
      path.is_absolute() ? reference
                         : (std::filesystem::path(card_path).parent_path() / path).string());
}

ExposureTarget target_of(const MeasureRequest& request, const std::optional<RollCard>& card) {
  ExposureTarget target;
  if (card) {
    std::optional<WedgeReference> reference;
    if (card->target && card->target->reference) {
      reference = reference_of_card(*request.card, *card->target->reference);
    }
    target = target_of_card(*card, std::move(reference));
  }
  target.areas = request.areas;
  return target;
}

MeasureOptions options_of(const MeasureRequest& request, const std::optional<RollCard>& card) {
  MeasureOptions options = request.measure;
  options.knowledge = shipped_scan_knowledge();
  if (card) {
    options.base_tint = card->base_tint;
    if (card->device && options.device == ScannerDevice::unknown) {
      options.device = *card->device;
    }
  }
  if (ExposureTarget target = target_of(request, card); !target.empty()) {
    options.target = std::move(target);
  }
  if (request.scanner) {
    options.scanner = read_scanner_file(*request.scanner);
  }
  if (request.wedge) {
    options.wedge = read_wedge_reference(*request.wedge);
    options.wedge->first_in_sight = request.first_step;
  }
  if (request.blank) {
    options.blank = open_file(*request.blank, request.open);
  }
  return options;
}

MeasuredRoll read_roll(const MeasureRequest& request, const MeasureOptions& options) {
  std::optional<ProgressLine> line;
  std::vector<RollScan> scans;
  for (const std::string& file : request.scans) {
    const auto open = [&request, &line, file] {
      line.emplace(file);
      return open_file(file, request.open);
    };
    const auto fail = [&line](const FileError& failure) {
      line.reset();
      complain(sentence_of(failure));
    };
    scans.push_back({file, open, [&line](double share) { line->show(share); }, fail});
  }
  return measure_roll(scans, options);
}

/// A roll's report, and what the page shows of its scans.
struct RollReport {
  RollRecord record;
  std::vector<PagePicture> pictures;
};

// The card is read first: a slip in it is told before minutes are spent on scans.
RollReport report_of(const MeasureRequest& request) {
  RollReport report;
  RollRecord& record = report.record;
  record.tool_version = FOGLINE_VERSION;
  if (request.card) {
    record.card = read_roll_card(*request.card);
  }
  MeasuredRoll roll = read_roll(request, options_of(request, record.card));
  report.pictures = page_pictures(roll.pictures);
  record.measurement = std::move(roll.measurement);
  record.judgement = judge_roll(record.measurement, record.card ? &*record.card : nullptr,
                                request.aim_contrast_index, *shipped_prior_knowledge());
  return report;
}

void put_json(const std::string& path, const RollRecord& record) {
  const std::string json = json_from_record(record);
  if (path == "-") {
    write_standard_output(json);
  } else {
    write_file(path, json);
  }
}

void put_csv(const std::string& path, const RollRecord& record) {
  const std::string table = curve_csv(record.measurement);
  if (path == "-") {
    write_standard_output(table);
  } else {
    write_file(path, table);
  }
}

/// Where the page was written; absent where it went to standard output.
std::optional<std::string> put_page(const MeasureRequest& request, const RollReport& report) {
  const std::string page = html_from_record(report.record, report.pictures, {request.units});
  if (!request.html) {
    const std::string path = write_default_page(request.scans.front(), page);
    if (path != default_page_path(request.scans.front())) {
      complain("the folder of " + request.scans.front() + " can't be written: the page is " + path);
    }
    return path;
  }
  if (*request.html == "-") {
    write_standard_output(page);
    return std::nullopt;
  }
  write_page(*request.html, page);
  return request.html;
}

void put_text(const MeasureRequest& request, const RollRecord& record,
              const std::optional<std::string>& page) {
  TextOptions options;
  options.color = standard_output_wants_color();
  options.units = request.units;
  options.width = standard_output_width();
  options.budget = request.budget;
  options.full = request.full;
  options.page = page;
  write_standard_output(text_from_record(record, options));
}

// Each report is tried even where another failed.
template <typename Writer>
bool written(const Writer& write) {
  try {
    write();
    return true;
  } catch (const FileError& failure) {
    complain(sentence_of(failure));
    return false;
  }
}

}  // namespace

ExitStatus run_measure(const MeasureRequest& request) {
  const RollReport report = report_of(request);
  const RollRecord& record = report.record;
  bool all_done = record.measurement.unread.empty();
  if (request.json) {
    all_done = written([&] { put_json(*request.json, record); }) && all_done;
  }
  if (request.csv) {
    all_done = written([&] { put_csv(*request.csv, record); }) && all_done;
  }
  std::optional<std::string> page;
  if (request.html != no_page) {
    all_done = written([&] { page = put_page(request, report); }) && all_done;
  }
  // Last: whoever reads it through a pipe may stop reading, which ends the program.
  if (request.json != "-" && request.html != "-" && request.csv != "-") {
    all_done = written([&] { put_text(request, record, page); }) && all_done;
  }
  if (!all_done) {
    return ExitStatus::file_failed;
  }
  // No other finding stands for a scan without densities.
  const bool unfit = std::any_of(record.judgement.findings.begin(), record.judgement.findings.end(),
                                 [](const Finding& f) { return f.cause == Cause::unfit_scan; });
  return unfit ? ExitStatus::unfit_scan : ExitStatus::done;
}

}  // namespace fogline
