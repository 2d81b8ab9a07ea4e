#include "terminal/text.h"

#include "terminal/budget.h"
#include "terminal/text_judgement.h"
#include "terminal/text_layout.h"
#include "words/caution_words.h"
#include "words/columns.h"
#include "words/curve_numbers.h"
#include "words/curve_words.h"
#include "words/film_words.h"
#include "words/judgement_words.h"
#include "words/phrases.h"
#include "words/safety.h"
#include "words/schema_words.h"
#include "words/story.h"
#include "words/verdict.h"

#include <fogline/words/refusal_words.h>

#include <algorithm>
#include <array>

namespace fogline {
namespace {

constexpr std::string_view missing = "–";

std::string cell(const Known<Quantity>& density, DensityUnits units) {
  if (!density) {
    return std::string(missing);
  }
  const NumberText text = text_from_density(*density, units);
  return text.value + (text.doubt.empty() ? "" : " " + text.doubt);
}

void put_trust(TextLayout& layout, const RollMeasurement& measurement) {
  layout.heading("Can this scan be trusted?");
  for (const ScanMeasurement& scan : measurement.scans) {
    layout.paragraph(scan.info.file + ": " + std::string(schema_word(scan.fitness)));
    for (const Caution& caution : scan.cautions) {
      layout.item(caution.severity == Severity::note ? '-' : '!', caution_sentence(caution));
    }
  }
  for (const UnreadFile& file : measurement.unread) {
    layout.item('!', sentence_of_refusal(file.file, file.why));
  }
}

void put_tint(TextLayout& layout, const ScanMeasurement& scan, DensityUnits units) {
  for (const std::string& sentence : tint_sentences(scan.tint, units)) {
    layout.paragraph(sentence);
  }
}

void put_clear_film(TextLayout& layout, const RollRecord& record, DensityUnits units) {
  const RollMeasurement& measurement = record.measurement;
  layout.heading("Clear film");
  for (const std::string& sentence : fog_sentences(record)) {
    layout.paragraph(sentence);
  }
  const bool several = measurement.scans.size() > 1;
  for (const ScanMeasurement& scan : measurement.scans) {
    const std::string name = several ? scan.info.file + ": " : "";
    if (!scan.base_fog) {
      layout.paragraph(name +
                       (several ? "base plus fog isn't known." : "Base plus fog isn't known."));
      put_tint(layout, scan, units);
      continue;
    }
    const BaseFog& base_fog = *scan.base_fog;
    layout.paragraph(name + (several ? "base plus fog " : "Base plus fog is ") +
                     sentence_from_density(base_fog.visual, units) + ", read " +
                     std::string(place_phrase(base_fog.source)) + ".");
    if (base_fog.channels) {
      const auto& [red, green, blue] = *base_fog.channels;
      layout.paragraph("In this scanner's own bands: red " + sentence_from_density(red, units) +
                       ", green " + sentence_from_density(green, units) + ", blue " +
                       sentence_from_density(blue, units) + ".");
    }
    put_tint(layout, scan, units);
  }
}

struct TableRow {
  std::string name;
  std::array<std::string, 4> cells;
  std::string paper;
};

TableRow row_of(const FrameMeasurement& frame, DensityUnits units) {
  const FrameTone& tone = frame.tone;
  return {std::to_string(frame.number) + (frame.repeats_frame ? " (again)" : ""),
          {cell(tone.shadow, units), cell(tone.middle, units), cell(tone.highlight, units),
           cell(tone.range, units)},
          tone.paper_range ? text_from_number(*tone.paper_range, 1) : std::string(missing)};
}

void put_rows(TextLayout& layout, const std::vector<TableRow>& rows) {
  const TableRow head{"frame", {"shadow", "middle", "highlight", "range"}, "paper"};
  std::size_t name_width = 8;
  std::size_t cell_width = 11;
  for (const TableRow& row : rows) {
    name_width = std::max(name_width, columns(row.name));
    for (const std::string& text : row.cells) {
      cell_width = std::max(cell_width, columns(text));
    }
  }
  const std::size_t table_width = 2 + name_width + 4 * (cell_width + 2) + 7;
  if (table_width > layout.width()) {
    for (const TableRow& row : rows) {
      std::string text = row.name + ":";
      for (std::size_t c = 0; c < row.cells.size(); ++c) {
        text += row.cells[c].empty() ? "" : " " + head.cells[c] + " " + row.cells[c] + ",";
      }
      text += row.paper.empty() ? "" : " paper " + row.paper + ",";
      text.pop_back();
      layout.item('-', text);
    }
    return;
  }
  const auto line_of = [&](const TableRow& row) {
    std::string line = padded(row.name, name_width);
    for (const std::string& text : row.cells) {
      line += "  " + padded(text, cell_width);
    }
    line += "  " + row.paper;
    return line.substr(0, line.find_last_not_of(' ') + 1);
  };
  layout.line(line_of(head), true);
  for (const TableRow& row : rows) {
    layout.line(line_of(row));
  }
}

void put_frames(TextLayout& layout, const RollMeasurement& measurement, const std::string& reading,
                DensityUnits units) {
  std::vector<TableRow> rows;
  bool from_base = false;
  for (const ScanMeasurement& scan : measurement.scans) {
    for (const FrameMeasurement& frame : scan.frames) {
      if (!frame.target) {
        rows.push_back(row_of(frame, units));
        from_base = from_base || scan.densities_above == DensitiesAbove::base;
      }
    }
  }
  if (rows.empty()) {
    return;
  }
  if (const auto& medians = measurement.medians) {
    rows.push_back({"median",
                    {cell(medians->shadow, units), cell(medians->middle, units),
                     cell(medians->highlight, units), cell(medians->range, units)},
                    ""});
    if (medians->net_shadow) {
      rows.push_back({"net",
                      {cell(medians->net_shadow, units), cell(medians->net_middle, units),
                       cell(medians->net_highlight, units), ""},
                      ""});
    }
  }
  layout.heading("Shadow and highlight");
  layout.paragraph(reading);
  layout.paragraph(
      std::string(units == DensityUnits::stops ? "Stops of light held back" : "Density") +
      (from_base ? ", counted from clear film."
                 : ", counted from the bare light, base included. Net is the median "
                   "above base plus fog."));
  put_rows(layout, rows);
}

void put_curve(TextLayout& layout, const RollRecord& record) {
  const std::vector<std::string> sentences = curve_sentences(record);
  if (sentences.empty()) {
    return;
  }
  layout.heading("The curve");
  for (const std::string& sentence : sentences) {
    layout.paragraph(sentence);
  }
  if (!record.measurement.sensitometry) {
    return;
  }
  const Sensitometry& read = *record.measurement.sensitometry;
  for (const std::string& line : step_lines(read)) {
    layout.line(line);
  }
  constexpr std::size_t name_width = 54;
  for (const CurveNumber& number : curve_numbers(read)) {
    if (*number.reading) {
      layout.line(padded(number.name, name_width) +
                  curve_number_text(*number.reading, number.decimals));
    }
  }
  std::string zones = "Net density of zones 0 to X:";
  for (const ZoneDensity& zone : read.placement.zones) {
    zones += " ";
    zones += zone.net_density ? text_from_number(zone.net_density->value, 2) : std::string(missing);
  }
  layout.paragraph(zones + (read.placement.metered ? " (the metered tone on Zone V)."
                                                   : " (Zone I laid on the speed point)."));
  for (const std::string& sentence : missing_numbers(read)) {
    layout.paragraph(sentence);
  }
  layout.paragraph(curve_method(read));
}

void put_list(TextLayout& layout, std::string_view title,
              const std::vector<std::string>& sentences) {
  if (sentences.empty()) {
    return;
  }
  layout.heading(title);
  for (const std::string& sentence : sentences) {
    layout.item('-', sentence);
  }
}

void put_method(TextLayout& layout, const RollRecord& record) {
  layout.heading("How it was measured");
  for (const ScanMeasurement& scan : record.measurement.scans) {
    std::string text = scan.info.file + ":";
    for (const std::string& sentence : method_sentences(scan)) {
      text += " " + sentence;
    }
    layout.paragraph(text);
  }
  layout.paragraph(
      "Shadow, middle and highlight are the 2nd, 50th and 98th percentile of a frame's density "
      "over spots of 0.1 mm. A doubt (±) covers the true value 95 times in 100. Paper is the log "
      "exposure range that the frame asks of the paper. fogline " +
      record.tool_version + ".");
}

}  // namespace

std::string text_from_record(const RollRecord& record, const TextOptions& options) {
  const RollMeasurement& measurement = record.measurement;
  constexpr int least_width = 40;
  TextLayout layout(std::max(options.width, least_width), options.color);
  const Verdict verdict = verdict_of(record, options.units);
  layout.heading("In one breath");
  layout.paragraph(verdict.judgement);
  // Where frames are, what was read of them stands with their numbers.
  const bool frames = !counted_frames(measurement).empty();
  for (const std::string& sentence :
       {verdict.also, frames ? std::string() : verdict.reading, verdict.trust}) {
    if (!sentence.empty()) {
      layout.paragraph(sentence);
    }
  }
  put_tonight(layout, record);
  put_next_roll(layout, record);
  put_trust(layout, measurement);
  if (!measurement.scans.empty()) {
    put_clear_film(layout, record, options.units);
  }
  put_frames(layout, measurement, verdict.reading, options.units);
  if (options.budget) {
    put_budgets(layout, measurement, options.units);
  }
  put_light_or_time(layout, record);
  put_curve(layout, record);
  put_marks(layout, record, options.units);
  put_baths(layout, record);
  put_list(layout, "What is not sure", unsure_sentences(record));
  std::vector<std::string> advice = scan_advice(record);
  advice.emplace_back("The whole set-up: fogline help scanning.");
  put_list(layout, "How to scan better", advice);
  if (!measurement.scans.empty()) {
    put_method(layout, record);
  }
  if (names_a_bath(record.judgement.advice)) {
    layout.heading("Cautions");
    for (const std::string_view sentence : safety_sentences()) {
      layout.item('-', sentence);
    }
  }
  return layout.text();
}

}  // namespace fogline
