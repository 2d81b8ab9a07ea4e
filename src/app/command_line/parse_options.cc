#include "app/command_line/parse_options.h"

#include "app/command_line/usage_error.h"

#include <algorithm>

#include <boost/program_options.hpp>

// The only unit that sees Boost.Program_options (it costs seconds to compile).

namespace fogline {
namespace {

namespace po = boost::program_options;

po::options_description description_of(const std::vector<OptionSpec>& options) {
  po::options_description description;
  for (const OptionSpec& option : options) {
    const std::string name(option.name);
    if (option.takes == Takes::nothing) {
      description.add_options()(name.c_str(), "");
    } else {
      description.add_options()(name.c_str(), po::value<std::string>());
    }
  }
  return description;
}

po::parsed_options parsed(const po::options_description& description,
                          const std::vector<std::string>& arguments) {
  // No guessing: "--form" isn't "--format", so that a later option can't change its meaning.
  const int style = po::command_line_style::unix_style ^ po::command_line_style::allow_guessing;
  try {
    return po::command_line_parser(arguments).options(description).style(style).run();
  } catch (const po::error& error) {
    throw UsageError(error.what());
  }
}

bool may_repeat(const std::vector<OptionSpec>& options, const std::string& name) {
  return std::any_of(options.begin(), options.end(), [&](const OptionSpec& option) {
    return option.name == name && option.repeats;
  });
}

}  // namespace

OptionSpec help_option() {
  return {.name = "help", .sentence = "Print how the command is used."};
}

GivenOptions parse_options(const std::vector<OptionSpec>& options,
                           const std::vector<std::string>& arguments) {
  const po::options_description description = description_of(options);
  GivenOptions given;
  for (const po::option& option : parsed(description, arguments).options) {
    const std::string text = option.value.empty() ? std::string() : option.value.front();
    if (option.string_key.empty()) {
      given.operands.push_back(text);
      continue;
    }
    std::vector<std::string>& texts = given.values[option.string_key];
    if (!texts.empty() && !may_repeat(options, option.string_key)) {
      throw UsageError("option '--" + option.string_key + "' is given more than once");
    }
    texts.push_back(text);
  }
  return given;
}

}  // namespace fogline
