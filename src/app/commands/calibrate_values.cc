#include "app/commands/calibrate_values.h"

#include "app/command_line/usage_error.h"
#include "app/commands/option_values.h"
#include "film/wedges/find_wedges.h"

#include <algorithm>
#include <cmath>

namespace fogline {
namespace {

// Steps closer than this can't be told apart; farther apart, no wedge is made.
constexpr double least_step_density = 0.02;
constexpr double greatest_step_density = 1.0;

// Sixty layers of the lightest grey gel are as dense as any film.
constexpr int most_layers = 60;
constexpr double greatest_layer_density = 2.0;

// Beyond these a number is a slip of the hand: no shutter stays open for an hour or errs by a stop.
constexpr double longest_time_s = 3600.0;
constexpr double greatest_doubt_stops = 1.0;

/// One of the times that `--bracket` lists.
double listed_time(const std::string& listed, const std::string& all) {
  const std::vector<std::string> parts = parts_of(listed, '/');
  const double numerator = number_from_text(parts.front()).value_or(NAN);
  const double denominator = parts.size() < 2 ? 1.0 : number_from_text(parts[1]).value_or(NAN);
  const double time_s = numerator / denominator;
  if (parts.size() > 2 || !(denominator > 0.0) || !(time_s > 0.0 && time_s <= longest_time_s)) {
    throw UsageError(
        "--bracket is a list of shutter times in seconds, such as 1/125,1/60,0.5, not "
        "\"" +
        all + "\"");
  }
  return time_s;
}

double positive_from_text(const std::string& text, double greatest, const char* what) {
  const auto value = number_from_text(text);
  if (!value || !(*value > 0.0 && *value <= greatest)) {
    throw UsageError(std::string(what) + ", not \"" + text + "\"");
  }
  return *value;
}

}  // namespace

WedgeReference nominal_wedge_from_text(const std::string& text) {
  const std::vector<std::string> parts = parts_of(text, 'x');
  const int steps = whole_number_from_text(parts.front()).value_or(0);
  const double density = number_from_text(parts.back()).value_or(0.0);
  if (parts.size() != 2 || steps < fewest_wedge_steps || steps > most_wedge_steps ||
      !(density >= least_step_density && density <= greatest_step_density)) {
    throw UsageError(
        "--steps is a number of steps (5 to 41) and the density of one (0.02 to 1), "
        "such as 21x0.15, not \"" +
        text + "\"");
  }
  return nominal_wedge(steps, density);
}

std::vector<int> layers_from_text(const std::string& text) {
  std::vector<int> layers;
  for (const std::string& part : parts_of(text, ',')) {
    const int count = whole_number_from_text(part).value_or(-1);
    if (count < 0 || count > most_layers ||
        std::find(layers.begin(), layers.end(), count) != layers.end()) {
      throw UsageError(
          "--layers is a list of different numbers of layers, such as 0,1,2,3,5, not "
          "\"" +
          text + "\"");
    }
    layers.push_back(count);
  }
  return layers;
}

std::vector<double> times_from_text(const std::string& text) {
  std::vector<double> times;
  for (const std::string& time : parts_of(text, ',')) {
    times.push_back(listed_time(time, text));
  }
  return times;
}

double layer_density_from_text(const std::string& text) {
  return positive_from_text(text, greatest_layer_density,
                            "--layer-density is the density of one layer, above 0 to 2");
}

double doubt_stops_from_text(const std::string& text) {
  return positive_from_text(text, greatest_doubt_stops,
                            "--bracket-doubt is a doubt in stops, above 0 to 1");
}

std::string date_from_text(const std::string& text) {
  constexpr std::string_view pattern = "dddd-dd-dd";
  bool fits = text.size() == pattern.size();
  for (std::size_t i = 0; fits && i < text.size(); ++i) {
    fits = pattern[i] == 'd' ? text[i] >= '0' && text[i] <= '9' : text[i] == '-';
  }
  if (!fits) {
    throw UsageError("--date is a date such as 2026-11-26, not \"" + text + "\"");
  }
  return text;
}

}  // namespace fogline
