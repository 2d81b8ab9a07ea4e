#include "terminal/text_measurement.h"

#include "words/caution_words.h"
#include "words/columns.h"
#include "words/curve_numbers.h"
#include "words/curve_words.h"
#include "words/film_words.h"
#include "words/judgement_words.h"
#include "words/phrases.h"
#include "words/report_words.h"
#include "words/schema_words.h"
#include "words/story.h"
#include "words/table_words.h"

#include <fogline/words/refusal_words.h>

#include <algorithm>
#include <span>

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

using Row = std::vector<std::string>;

Row row_of(const FrameMeasurement& frame, DensityUnits units) {
  const FrameTone& tone = frame.tone;
  const std::string note = frame_note(frame);
  return {std::to_string(frame.number) + (note.empty() ? "" : " " + note),
          cell(tone.shadow, units),
          cell(tone.middle, units),
          cell(tone.highlight, units),
          cell(tone.range, units),
          tone.paper_range ? text_from_number(*tone.paper_range, 1) : std::string(missing)};
}

std::vector<Row> frame_rows(const RollMeasurement& measurement, DensityUnits units) {
  std::vector<Row> rows;
  for (const ScanMeasurement& scan : measurement.scans) {
    for (const FrameMeasurement& frame : scan.frames) {
      if (!frame.target) {
        rows.push_back(row_of(frame, units));
      }
    }
  }
  if (const auto& medians = measurement.medians) {
    rows.push_back({"median", cell(medians->shadow, units), cell(medians->middle, units),
                    cell(medians->highlight, units), cell(medians->range, units), ""});
    if (medians->net_shadow) {
      rows.push_back({"net", cell(medians->net_shadow, units), cell(medians->net_middle, units),
                      cell(medians->net_highlight, units), "", ""});
    }
  }
  return rows;
}

std::size_t table_width(const std::vector<Row>& rows) {
  std::size_t width = 0;
  for (std::size_t c = 0; c < rows.front().size(); ++c) {
    std::size_t widest = 0;
    for (const Row& row : rows) {
      widest = std::max(widest, columns(row[c]));
    }
    width += widest + 2;
  }
  return width;
}

/// A table where it fits; on a narrow terminal a list that names each number.
void put_table(TextLayout& layout, std::span<const std::string_view> head,
               const std::vector<Row>& rows) {
  std::vector<Row> table{Row(head.begin(), head.end())};
  table.insert(table.end(), rows.begin(), rows.end());
  if (table_width(table) <= layout.width()) {
    put_columns(layout, table);
    return;
  }
  for (const Row& row : rows) {
    std::string text = row.front() + ":";
    for (std::size_t c = 1; c < row.size(); ++c) {
      if (!row[c].empty()) {
        text.append(text.ends_with(':') ? " " : ", ").append(head[c]).append(" ").append(row[c]);
      }
    }
    layout.item('-', text);
  }
}

void put_curve_numbers(TextLayout& layout, const Sensitometry& read) {
  std::size_t name_width = 0;
  const std::vector<CurveNumber> numbers = curve_numbers(read);
  for (const CurveNumber& number : numbers) {
    name_width = std::max(name_width, columns(number.name) + 2);
  }
  for (const CurveNumber& number : numbers) {
    if (*number.reading) {
      layout.row(padded(number.name, name_width),
                 curve_number_text(*number.reading, number.decimals));
    }
  }
}

}  // namespace

void put_trust(TextLayout& layout, const RollMeasurement& measurement) {
  for (const ScanMeasurement& scan : measurement.scans) {
    const std::string sentence = fitness_sentence(scan);
    layout.paragraph(
        scan.info.file + ": " +
        (layout.has_told(sentence) ? std::string(schema_word(scan.fitness)) + "." : sentence));
    for (const Caution& caution : scan.cautions) {
      layout.item_once(caution.severity == Severity::note ? '-' : '!', caution_sentence(caution));
    }
  }
  for (const UnreadFile& file : measurement.unread) {
    layout.item_once('!', sentence_of_refusal(file.file, file.why));
  }
}

void put_clear_film(TextLayout& layout, const RollRecord& record, DensityUnits units) {
  for (const std::string& sentence : fog_sentences(record)) {
    layout.paragraph_once(sentence);
  }
  const RollMeasurement& measurement = record.measurement;
  for (const ScanMeasurement& scan : measurement.scans) {
    const std::string name = measurement.scans.size() > 1 ? scan.info.file + ": " : "";
    layout.paragraph(name + base_fog_sentence(scan, units));
    layout.paragraph_once(channel_sentence(scan, units));
    for (const std::string& sentence : tint_sentences(scan.tint, units)) {
      layout.paragraph_once(sentence);
    }
  }
}

void put_frames(TextLayout& layout, const RollMeasurement& measurement, DensityUnits units) {
  layout.paragraph(frame_table_caption(units));
  layout.paragraph(counted_from_words(measurement));
  put_table(layout, frame_table_head, frame_rows(measurement, units));
}

void put_curve(TextLayout& layout, const RollRecord& record) {
  for (const std::string& sentence : curve_sentences(record)) {
    layout.paragraph_once(sentence);
  }
  if (!record.measurement.sensitometry) {
    return;
  }
  const Sensitometry& read = *record.measurement.sensitometry;
  std::vector<Row> exposures;
  for (const StepRow& row : step_rows(read)) {
    exposures.push_back({row.name, row.log_h, row.net_density, row.off_curve});
  }
  put_table(layout, exposure_table_head, exposures);
  put_curve_numbers(layout, read);
  layout.paragraph(zones_sentence(read.placement));
  for (const std::string& sentence : missing_numbers(read)) {
    layout.paragraph_once(sentence);
  }
  layout.paragraph(curve_method(read));
}

void put_method(TextLayout& layout, const RollRecord& record) {
  for (const ScanMeasurement& scan : record.measurement.scans) {
    std::string text = scan.info.file + ":";
    for (const std::string& sentence : method_sentences(scan)) {
      text += " " + sentence;
    }
    layout.paragraph(text);
  }
  layout.paragraph(std::string(method_explanation()) + " " + measured_by(record.tool_version));
}

}  // namespace fogline
