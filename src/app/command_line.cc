#include "command_line.h"

#include "option_values.h"

#include <algorithm>
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
  add("card", text("CARD.toml"),
      "the roll card: film, developer, time, temperature and baths, as far as you noted them; see "
      "fogline help card");
  add("aim-contrast-index", text("X"),
      "the contrast that you develop for, 0.2 to 1.5; default: the card's, else 0.58 (0.45 where "
      "the card says that you print with condenser light)");
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

po::variables_map parsed(const std::vector<std::string>& arguments) {
  po::options_description all = measure_options();
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
  request.blank = text_of(values, "blank");
  request.card = text_of(values, "card");
  check_files(request);
  return request;
}

Request help_request(const std::vector<std::string>& arguments) {
  Request request;
  if (arguments.size() > 1) {
    throw UsageError("help takes one topic: measure, card or scanning");
  }
  request.help = HelpRequest{arguments.empty() ? std::string() : arguments.front()};
  const std::string& topic = request.help->topic;
  if (!topic.empty() && topic != "measure" && topic != "card" && topic != "scanning") {
    throw UsageError("there is no help on \"" + topic +
                     "\": the topics are measure, card and scanning");
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
    const po::variables_map values = parsed(rest);
    if (values.count("help") != 0) {
      request.help = HelpRequest{"measure"};
    } else {
      request.measure = measure_request(values);
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

}  // namespace fogline
