#include "command_line.h"

#include "calibrate_values.h"
#include "option_values.h"

#include <algorithm>
#include <array>
#include <sstream>

#include <boost/program_options.hpp>

// The only unit that sees Boost.Program_options (it costs seconds to compile). Every value is read
// as text and turned into what it means by option_values, so that no number depends on the locale.

namespace fogline {
namespace {

namespace po = boost::program_options;

po::options_description measure_options() {
  po::options_description options("Options");
  const auto text = [](const char* name) { return po::value<std::string>()->value_name(name); };
  auto add = options.add_options();
  add("json", text("FILE"), "write the report as JSON too; - is standard output");
  add("html", text("FILE|none"),
      "where the page goes; default FIRSTSCAN.report.html beside the first scan; - is standard "
      "output, none writes no page");
  add("units", text("density|stops"), "print densities as density (default) or in stops");
  add("transfer", text("CURVE"),
      "how codes become light, for files that don't say it or say it wrongly: auto, linear, srgb, "
      "or the POWER of the curve, such as 2.2");
  add("format", text("FORMAT"), "auto, 135, 120 or sheet");
  add("frame-mm", text("LENGTH"), "length of a frame along the film: half, square, panoramic");
  add("clear", text("PLACE"),
      "where the bare light may be read: auto, holes (perforations), gap (beside the film), none");
  add("blank", text("SCAN"),
      "a picture of the bare light made with the very settings of the scans: takes the unevenness "
      "of lamp and lens out");
  add("scanner", text("SCANNER.json"),
      "the scanner's calibration (see fogline help calibrate): densities are then measured, not "
      "estimated");
  add("wedge", text("REF.csv"),
      "a step wedge of these densities lies in the scan beside the film: calibrates and measures "
      "in one go");
  add("budget", "break each doubt up by where it comes from");
  add("full", "print the whole report, not only what fits on one screen");
  add("card", text("CARD.toml"),
      "the roll card: film, developer, time, temperature and baths, as far as you noted them; see "
      "fogline help card");
  add("area", po::value<std::vector<std::string>>()->value_name("X,Y,W,H=STOPS"),
      "an area of the film, in pixels of the file, and the exposure that it got, in stops from the "
      "metered one; once for each area");
  add("csv", text("FILE"),
      "the characteristic curve as a table: steps, curve with its doubt, and what is read from it; "
      "- is standard output");
  add("aim-contrast-index", text("X"),
      "the contrast that you develop for, 0.2 to 1.5; default: the card's, else 0.58 (0.45 where "
      "the card says that you print with condenser light)");
  add("help", "print this");
  return options;
}

po::options_description calibrate_options() {
  po::options_description options("Options");
  const auto text = [](const char* name) { return po::value<std::string>()->value_name(name); };
  auto add = options.add_options();
  add("output", text("SCANNER.json"), "where the calibration goes; - is standard output");
  add("wedge", text("REF.csv"),
      "the scan shows a step wedge of these densities: CSV (step,density) or ISO 28178 text");
  add("steps", text("NxD"),
      "the same with nominal densities: 21x0.15 is 21 steps from 0.05 on, 0.15 apart; carries a "
      "doubt of 3 % of every density");
  add("layers", text("N,N,..."),
      "the scans show so many layers of one grey gel or dye film, one scan each, or one scan all, "
      "lightest first: tells the response's shape");
  add("layer-density", text("D"), "the density of one layer, which gives --layers its scale");
  add("bracket", text("T,T,..."),
      "for cameras: pictures of one even target at these shutter times in seconds, such as "
      "1/125,1/60,1/30");
  add("bracket-doubt", text("STOPS"), "doubt of each time, 95 of 100; default 0.1");
  add("device", text("flatbed|film-scanner|camera"),
      "the kind of device: it decides how silver scatters and how surely clear film is read");
  add("html", text("FILE|none"),
      "where the page goes; default SCANNER.report.html beside the calibration; - is standard "
      "output, none writes no page");
  add("date", text("DATE"), "the day of the scan, such as 2026-11-26; default today");
  add("help", "print this");
  return options;
}

// The library's own sentences do, but for the one that doesn't say what was repeated.
[[noreturn]] void throw_usage(const po::error& error) {
  std::string message = error.what();
  if (const auto* many = dynamic_cast<const po::multiple_occurrences*>(&error)) {
    message = "option " + many->get_option_name() + " is given more than once";
  }
  throw UsageError(message);
}

po::variables_map parsed(const std::vector<std::string>& arguments, po::options_description all) {
  all.add_options()("scan", po::value<std::vector<std::string>>());
  po::positional_options_description positions;
  positions.add("scan", -1);
  po::variables_map values;
  try {
    // No guessing: "--form" isn't "--format", so that a later option can't change its meaning.
    const int style = po::command_line_style::unix_style ^ po::command_line_style::allow_guessing;
    po::store(
        po::command_line_parser(arguments).options(all).positional(positions).style(style).run(),
        values);
  } catch (const po::error& error) {
    throw_usage(error);
  }
  return values;
}

std::optional<std::string> text_of(const po::variables_map& values, const char* name) {
  if (values.count(name) == 0) {
    return std::nullopt;
  }
  return values[name].as<std::string>();
}

MeasureRequest measure_request(const po::variables_map& values) {
  MeasureRequest request;
  if (values.count("scan") != 0) {
    request.scans = values["scan"].as<std::vector<std::string>>();
  }
  request.json = text_of(values, "json");
  request.html = text_of(values, "html");
  if (const auto text = text_of(values, "units")) {
    request.units = units_from_text(*text);
  }
  if (const auto text = text_of(values, "transfer")) {
    request.open.transfer = transfer_from_text(*text);
  }
  if (const auto text = text_of(values, "format")) {
    request.measure.format = format_from_text(*text);
  }
  if (const auto text = text_of(values, "frame-mm")) {
    request.measure.frame_mm = frame_mm_from_text(*text);
  }
  if (const auto text = text_of(values, "clear")) {
    request.measure.clear = clear_from_text(*text);
  }
  if (const auto text = text_of(values, "aim-contrast-index")) {
    request.aim_contrast_index = contrast_index_from_text(*text);
  }
  if (values.count("area") != 0) {
    for (const std::string& text : values["area"].as<std::vector<std::string>>()) {
      request.areas.push_back(area_from_text(text));
    }
  }
  request.csv = text_of(values, "csv");
  request.blank = text_of(values, "blank");
  request.scanner = text_of(values, "scanner");
  request.wedge = text_of(values, "wedge");
  request.budget = values.count("budget") != 0;
  request.full = values.count("full") != 0;
  request.card = text_of(values, "card");
  check_files(request);
  return request;
}

CalibrateRequest calibrate_request(const po::variables_map& values) {
  CalibrateRequest request;
  if (values.count("scan") != 0) {
    request.scans = values["scan"].as<std::vector<std::string>>();
  }
  request.output = text_of(values, "output").value_or("");
  request.html = text_of(values, "html");
  request.wedge = text_of(values, "wedge");
  if (const auto text = text_of(values, "steps")) {
    request.steps = nominal_wedge_from_text(*text);
  }
  if (const auto text = text_of(values, "layers")) {
    request.layers = layers_from_text(*text);
  }
  if (const auto text = text_of(values, "layer-density")) {
    request.layer_density = layer_density_from_text(*text);
  }
  if (const auto text = text_of(values, "bracket")) {
    request.bracket_s = times_from_text(*text);
  }
  if (const auto text = text_of(values, "bracket-doubt")) {
    request.bracket_doubt_stops = doubt_stops_from_text(*text);
  }
  if (const auto text = text_of(values, "device")) {
    request.device = device_from_text(*text);
  }
  if (const auto text = text_of(values, "date")) {
    request.date = date_from_text(*text);
  }
  check_calibrate(request);
  return request;
}

Request help_request(const std::vector<std::string>& arguments) {
  Request request;
  if (arguments.size() > 1) {
    throw UsageError("help takes one topic: measure, calibrate, card or scanning");
  }
  request.help = HelpRequest{arguments.empty() ? std::string() : arguments.front()};
  const std::string& topic = request.help->topic;
  constexpr std::array topics{"", "measure", "calibrate", "card", "scanning"};
  if (std::find(topics.begin(), topics.end(), topic) == topics.end()) {
    throw UsageError("there is no help on \"" + topic +
                     "\": the topics are measure, calibrate, card and scanning");
  }
  return request;
}

}  // namespace

Request request_from_arguments(const std::vector<std::string>& arguments) {
  Request request;
  if (arguments.empty()) {
    throw UsageError("say what to do: fogline measure SCAN, or fogline --help");
  }
  const std::string& command = arguments.front();
  const std::vector<std::string> rest(arguments.begin() + 1, arguments.end());
  if (command == "--version") {
    request.version = VersionRequest{};
  } else if (command == "--help" || command == "-h") {
    request.help = HelpRequest{};
  } else if (command == "help") {
    request = help_request(rest);
  } else if (command == "measure") {
    const po::variables_map values = parsed(rest, measure_options());
    if (values.count("help") != 0) {
      request.help = HelpRequest{"measure"};
    } else {
      request.measure = measure_request(values);
    }
  } else if (command == "calibrate") {
    const po::variables_map values = parsed(rest, calibrate_options());
    if (values.count("help") != 0) {
      request.help = HelpRequest{"calibrate"};
    } else {
      request.calibrate = calibrate_request(values);
    }
  } else {
    throw UsageError("\"" + command + "\" is no command: try fogline --help");
  }
  return request;
}

std::string measure_options_help() {
  std::ostringstream text;
  text << measure_options();
  return text.str();
}

std::string calibrate_options_help() {
  std::ostringstream text;
  text << calibrate_options();
  return text.str();
}

}  // namespace fogline
