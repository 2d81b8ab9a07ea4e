#include "app/commands/measure_options.h"

#include "app/commands/measure_values.h"
#include "app/commands/option_words.h"
#include "app/commands/scanner_values.h"

namespace fogline {
namespace {

using Row = Option<MeasureRequest>;
using Ask = MeasureRequest;
using Text = std::string;

// What goes out.
std::vector<Row> report_options() {
  return {
      {{.name = "full",
        .sentence = "Print the whole report. Without it the terminal gets its first screen, and "
                    "the page has the rest."},
       [](Ask& ask, const Text&) { ask.full = true; }},
      {{.name = "html",
        .takes = Takes::file,
        .argument = "FILE",
        .words = {no_page},
        .endings = {"html"},
        .sentence = "Where the page goes; - is standard output, none writes no page.",
        .otherwise = "FIRSTSCAN.report.html beside the first scan"},
       [](Ask& ask, const Text& text) { ask.html = text; }},
      {{.name = "json",
        .takes = Takes::file,
        .argument = "FILE",
        .endings = {"json"},
        .sentence = "Write the report as JSON too; - is standard output."},
       [](Ask& ask, const Text& text) { ask.json = text; }},
      {{.name = "csv",
        .takes = Takes::file,
        .argument = "FILE",
        .endings = {"csv"},
        .sentence = "Write the characteristic curve as a table: steps, curve with its doubt, and "
                    "what is read from it; - is standard output."},
       [](Ask& ask, const Text& text) { ask.csv = text; }},
      {{.name = "units",
        .takes = Takes::text,
        .words = words_of(units_words),
        .sentence = "Print densities as density or in stops.",
        .otherwise = "density"},
       [](Ask& ask, const Text& text) { ask.units = units_from_text(text); }},
      {{.name = "budget", .sentence = "Break each doubt up by where it comes from."},
       [](Ask& ask, const Text&) { ask.budget = true; }},
  };
}

// What you know of the roll.
std::vector<Row> roll_options() {
  return {
      {{.name = "card",
        .takes = Takes::file,
        .argument = "CARD.toml",
        .endings = {"toml"},
        .sentence = "The roll card: film, developer, time, temperature and baths, as far as you "
                    "noted them; see fogline help card."},
       [](Ask& ask, const Text& text) { ask.card = text; }},
      {{.name = "aim-contrast-index",
        .takes = Takes::text,
        .argument = "X",
        .sentence = "The contrast that you develop for, 0.2 to 1.5.",
        .otherwise = "the card's, else 0.58 (0.45 where the card says that you print with "
                     "condenser light)"},
       [](Ask& ask, const Text& text) { ask.aim_contrast_index = contrast_index_from_text(text); }},
      {{.name = "area",
        .takes = Takes::text,
        .argument = "X,Y,W,H=STOPS",
        .repeats = true,
        .sentence = "An area of the film, in pixels of the file, and the exposure that it got, in "
                    "stops from the metered one; once for each area."},
       [](Ask& ask, const Text& text) { ask.areas.push_back(area_from_text(text)); }},
      {{.name = "format",
        .takes = Takes::text,
        .words = words_of(format_words()),
        .sentence = "The film's format, where the scan doesn't show it.",
        .otherwise = "auto"},
       [](Ask& ask, const Text& text) { ask.measure.format = format_from_text(text); }},
      {{.name = "frame-mm",
        .takes = Takes::text,
        .argument = "LENGTH",
        .sentence = "Length of a frame along the film, 8 to 250 mm: half, square or panoramic "
                    "frames."},
       [](Ask& ask, const Text& text) { ask.measure.frame_mm = frame_mm_from_text(text); }},
  };
}

// What you know of the scanner.
std::vector<Row> scanner_options() {
  return {
      {{.name = "scanner",
        .takes = Takes::file,
        .argument = "SCANNER.json",
        .endings = {"json"},
        .sentence = "The scanner's calibration (see fogline help calibrate): densities are then "
                    "measured, not estimated."},
       [](Ask& ask, const Text& text) { ask.scanner = text; }},
      {{.name = "device",
        .takes = Takes::text,
        .words = words_of(device_words()),
        .sentence = "What made the scans: silver reads denser in narrow light, and how much "
                    "depends on it.",
        .otherwise = "the card's, else what the file or the calibration tells"},
       [](Ask& ask, const Text& text) { ask.measure.device = device_from_text(text); }},
      {{.name = "wedge",
        .takes = Takes::file,
        .argument = "REF.csv",
        .endings = {"csv", "txt"},
        .sentence = "A step wedge of these densities lies in the scan beside the film: calibrates "
                    "and measures in one go."},
       [](Ask& ask, const Text& text) { ask.wedge = text; }},
      {{.name = "first",
        .takes = Takes::text,
        .argument = "N",
        .sentence = "The lightest step in sight is this one of the reference, counted from 1.",
        .otherwise = "told from the bare light"},
       [](Ask& ask, const Text& text) { ask.first_step = first_step_from_text(text); }},
      {{.name = "blank",
        .takes = Takes::file,
        .argument = "SCAN",
        .endings = scan_endings(),
        .sentence = "A picture of the bare light made with the very settings of the scans: takes "
                    "the unevenness of lamp and lens out."},
       [](Ask& ask, const Text& text) { ask.blank = text; }},
      {{.name = "clear",
        .takes = Takes::text,
        .words = words_of(clear_words),
        .sentence = "Where the bare light may be read: in the holes (perforations), in a gap "
                    "beside the film, nowhere.",
        .otherwise = "auto"},
       [](Ask& ask, const Text& text) { ask.measure.clear = clear_from_text(text); }},
      {{.name = "transfer",
        .takes = Takes::text,
        .argument = "POWER",
        .words = words_of(transfer_words()),
        .sentence = "How codes become light, for files that don't say it or say it wrongly; POWER "
                    "is that of the curve, such as 2.2.",
        .otherwise = "auto"},
       [](Ask& ask, const Text& text) { ask.open.transfer = transfer_from_text(text); }},
  };
}

}  // namespace

std::vector<Row> measure_options() {
  std::vector<Row> rows = report_options();
  for (const auto& more : {roll_options(), scanner_options()}) {
    rows.insert(rows.end(), more.begin(), more.end());
  }
  return rows;
}

}  // namespace fogline
