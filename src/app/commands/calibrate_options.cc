#include "app/commands/calibrate_options.h"

#include "app/commands/calibrate_values.h"
#include "app/commands/option_words.h"
#include "app/commands/scanner_values.h"

namespace fogline {
namespace {

using Row = Option<CalibrateRequest>;
using Ask = CalibrateRequest;
using Text = std::string;

// What the scans show, in one of four ways.
std::vector<Row> target_options() {
  return {
      {{.name = "wedge",
        .takes = Takes::file,
        .argument = "REF.csv",
        .endings = {"csv", "txt"},
        .sentence = "The scan shows a step wedge of these densities: CSV (step,density) or ISO "
                    "28178 text."},
       [](Ask& ask, const Text& text) { ask.wedge = text; }},
      {{.name = "steps",
        .takes = Takes::text,
        .argument = "NxD",
        .sentence = "The same with nominal densities: 21x0.15 is 21 steps from 0.05 on, 0.15 "
                    "apart. Carries a doubt of 3 % of every density."},
       [](Ask& ask, const Text& text) { ask.steps = nominal_wedge_from_text(text); }},
      {{.name = "first",
        .takes = Takes::text,
        .argument = "N",
        .sentence = "The lightest step in sight is this one of the reference, counted from 1.",
        .otherwise = "told from the bare light"},
       [](Ask& ask, const Text& text) { ask.first_step = first_step_from_text(text); }},
      {{.name = "layers",
        .takes = Takes::text,
        .argument = "N,N,...",
        .sentence = "The scans show so many layers of one grey gel or dye film, one scan each, or "
                    "one scan all, lightest first. Tells the response's shape."},
       [](Ask& ask, const Text& text) { ask.layers = layers_from_text(text); }},
      {{.name = "layer-density",
        .takes = Takes::text,
        .argument = "D",
        .sentence = "The density of one layer, which gives --layers its scale."},
       [](Ask& ask, const Text& text) { ask.layer_density = layer_density_from_text(text); }},
      {{.name = "bracket",
        .takes = Takes::text,
        .argument = "T,T,...",
        .sentence = "For cameras: pictures of one even target at these shutter times in seconds, "
                    "such as 1/125,1/60,1/30."},
       [](Ask& ask, const Text& text) { ask.bracket_s = times_from_text(text); }},
      {{.name = "bracket-doubt",
        .takes = Takes::text,
        .argument = "STOPS",
        .sentence = "Doubt of each time, 95 of 100.",
        .otherwise = "0.1"},
       [](Ask& ask, const Text& text) { ask.bracket_doubt_stops = doubt_stops_from_text(text); }},
  };
}

std::vector<Row> other_options() {
  return {
      {{.name = "device",
        .takes = Takes::text,
        .words = words_of(device_words()),
        .sentence = "The kind of device: it decides how silver scatters and how surely clear film "
                    "is read."},
       [](Ask& ask, const Text& text) { ask.device = device_from_text(text); }},
      {{.name = "date",
        .takes = Takes::text,
        .argument = "DATE",
        .sentence = "The day of the scan, such as 2026-11-26.",
        .otherwise = "today"},
       [](Ask& ask, const Text& text) { ask.date = date_from_text(text); }},
      {{.name = "html",
        .takes = Takes::file,
        .argument = "FILE",
        .words = {no_page},
        .endings = {"html"},
        .sentence = "Where the page goes; - is standard output, none writes no page.",
        .otherwise = "SCANNER.report.html beside the calibration"},
       [](Ask& ask, const Text& text) { ask.html = text; }},
  };
}

}  // namespace

std::vector<Row> calibrate_options() {
  std::vector<Row> rows{
      {{.name = "output",
        .takes = Takes::file,
        .argument = "SCANNER.json",
        .endings = {"json"},
        .sentence = "Where the calibration goes; - is standard output."},
       [](Ask& ask, const Text& text) { ask.output = text; }},
  };
  for (const auto& more : {target_options(), other_options()}) {
    rows.insert(rows.end(), more.begin(), more.end());
  }
  return rows;
}

}  // namespace fogline
