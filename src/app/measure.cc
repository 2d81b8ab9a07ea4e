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

#include <fogline/base/error.h>
#include <fogline/process/target_of_card.h>
#include <fogline/record/record_json.h>
#include <fogline/tables/prior_knowledge.h>
#include <fogline/tables/roll_card_file.h>
#include <fogline/tables/scanner_file.h>
#include <fogline/tables/wedge_reference_file.h>
#include <fogline/words/refusal_words.h>

#include <algorithm>
#include <filesystem>
#include <memory>

namespace fogline {
namespace {

/// What files beside the scans say of the scanner.
struct ScannerKnowledge {
  std::optional<ScannerCalibration> scanner;
  std::optional<WedgeReference> wedge;
};

ScannerKnowledge read_scanner_knowledge(const MeasureRequest& request) {
  ScannerKnowledge knowledge;
  if (request.scanner) {
    knowledge.scanner = read_scanner_file(*request.scanner);
  }
  if (request.wedge) {
    knowledge.wedge = read_wedge_reference(*request.wedge);
  }
  return knowledge;
}

ScanMeasurement read_scan(const std::string& file, const MeasureRequest& request,
                          int frame_number) {
  std::error_code error;
  if (std::filesystem::is_directory(file, error)) {
    throw FileError(file, Refusal::scan_is_folder);
  }
  ProgressLine progress(file);
  const auto source = open_scan(file, request.open);
  MeasureOptions options = request.measure;
  const auto blank = request.blank ? open_scan(*request.blank, request.open) : nullptr;
  options.blank = blank.get();
  return measure_scan(*source, options, frame_number, progress.callback());
}

RollMeasurement read_roll(const MeasureRequest& request) {
  std::vector<ScanMeasurement> scans;
  std::vector<UnreadFile> unread;
  int next_frame = 1;
  for (const std::string& file : request.scans) {
    try {
      scans.push_back(read_scan(file, request, next_frame));
      next_frame += static_cast<int>(scans.back().frames.size());
    } catch (const FileError& failure) {
      complain(sentence_of(failure));
      unread.push_back({file, failure.why()});
    }
  }
  RollMeasurement roll = join_scans(std::move(scans), request.measure.target);
  roll.unread = std::move(unread);
  return roll;
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

// The card is read first: a slip in it is told before minutes are spent on scans.
RollRecord record_roll(MeasureRequest request) {
  RollRecord record;
  record.tool_version = FOGLINE_VERSION;
  if (request.card) {
    record.card = read_roll_card(*request.card);
    request.measure.base_tint = record.card->base_tint;
  }
  const ExposureTarget target = target_of(request, record.card);
  request.measure.target = target.empty() ? nullptr : &target;
  const ScannerKnowledge scanner = read_scanner_knowledge(request);
  request.measure.scanner = scanner.scanner ? &*scanner.scanner : nullptr;
  request.measure.wedge = scanner.wedge ? &*scanner.wedge : nullptr;
  const PriorKnowledge knowledge = shipped_prior_knowledge();
  request.measure.knowledge = std::make_shared<const ScanKnowledge>(knowledge.scan);
  record.measurement = read_roll(request);
  record.judgement = judge_roll(record.measurement, record.card ? &*record.card : nullptr,
                                request.aim_contrast_index, knowledge);
  return record;
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

void put_page(const MeasureRequest& request, const RollRecord& record) {
  const std::string page =
      html_from_record(record, page_pictures(record.measurement), {request.units});
  if (!request.html) {
    const std::string path = write_default_page(request.scans.front(), page);
    if (path != default_page_path(request.scans.front())) {
      complain("the folder of " + request.scans.front() + " can't be written: the page is " + path);
    }
  } else if (*request.html == "-") {
    write_standard_output(page);
  } else {
    write_page(*request.html, page);
  }
}

void put_text(const MeasureRequest& request, const RollRecord& record) {
  write_standard_output(text_from_record(record, {standard_output_wants_color(), request.units,
                                                  standard_output_width(), request.budget}));
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
  const RollRecord record = record_roll(request);
  bool all_done = record.measurement.unread.empty();
  if (request.json) {
    all_done = written([&] { put_json(*request.json, record); }) && all_done;
  }
  if (request.csv) {
    all_done = written([&] { put_csv(*request.csv, record); }) && all_done;
  }
  if (request.html != no_page) {
    all_done = written([&] { put_page(request, record); }) && all_done;
  }
  // Last: whoever reads it through a pipe may stop reading, which ends the program.
  if (request.json != "-" && request.html != "-" && request.csv != "-") {
    all_done = written([&] { put_text(request, record); }) && all_done;
  }
  if (!all_done) {
    return ExitStatus::file_failed;
  }
  // No other finding stands for a scan without densities.
  const bool unfit = std::any_of(record.judgement.findings.begin(), record.judgement.findings.end(),
                                 [](const Finding& f) { return f.code == "unfit-scan"; });
  return unfit ? ExitStatus::unfit_scan : ExitStatus::done;
}

}  // namespace fogline
