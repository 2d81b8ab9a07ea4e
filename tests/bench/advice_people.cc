#include "advice_people.h"

#include <cmath>

namespace bench {
namespace {

/// Factor of rate for 10 degrees in the makers' charts by which people convert times.
constexpr double chart_q10 = 2.6;
/// Spread of rolls about their aim that is weighed in with a reading, share.
constexpr double population_sd_share = 0.2;

double rate_at(double q10, double temperature_c) {
  return std::pow(q10, (temperature_c - 20.0) / 10.0);
}

/// As people set a clock.
double set_clock_min(double minutes) {
  const double step = minutes < 10.0 ? 0.25 : 0.5;
  return step * std::round(minutes / step);
}

double power_of_log_law(const TrueGrowth& growth) {
  return growth.exponent * published_contrast / (growth.limit - published_contrast);
}

}  // namespace

double TrueGrowth::contrast(double effort) const {
  if (!log_law) {
    return published_contrast * std::pow(effort, exponent);
  }
  const double open = 1.0 - published_contrast / limit;
  return std::fmax(0.0, limit * (1.0 - open * std::pow(effort, -power_of_log_law(*this))));
}

double TrueGrowth::effort_for(double contrast) const {
  if (!log_law) {
    return std::pow(contrast / published_contrast, 1.0 / exponent);
  }
  if (contrast >= limit) {
    return 0.0;
  }
  const double open = 1.0 - published_contrast / limit;
  return std::pow((1.0 - contrast / limit) / open, -1.0 / power_of_log_law(*this));
}

double Person::effort(double minutes, double at_c) const {
  return habit * minutes / published_min_at_20 * rate_at(q10, at_c + thermometer_bias_c);
}

double Person::contrast(double minutes, double at_c) const {
  return growth.contrast(effort(minutes, at_c));
}

double Person::right_minutes(double aim, double at_c) const {
  return growth.effort_for(aim) / effort(1.0, at_c);
}

TrueGrowth draw_growth(filmsim::Random& random, bool tabular) {
  TrueGrowth growth;
  growth.log_law = random.chance(0.6);
  growth.limit = random.uniform(0.85, 1.5);
  growth.exponent = tabular ? random.uniform(0.52, 0.85) : random.uniform(0.42, 0.72);
  return growth;
}

void draw_habits(filmsim::Random& random, Person& person) {
  person.growth = draw_growth(random, person.tabular);
  person.q10 = random.uniform(1.8, 3.0);
  person.habit = std::exp(random.normal(0.0, 0.27));
  person.thermometer_bias_c = random.normal(0.0, 0.7);
}

Person draw_person(filmsim::Random& random) {
  Person person;
  person.tabular = random.chance(0.35);
  draw_habits(random, person);
  person.published_min_at_20 = 8.0 * std::exp(random.normal(0.0, 0.26));
  person.temperature_c = random.chance(0.6) ? 20.0 : 0.5 * random.integer(36, 48);
  person.time_min =
      set_clock_min(person.published_min_at_20 / rate_at(chart_q10, person.temperature_c));
  return person;
}

ContrastRead read_contrast(filmsim::Random& random, double true_contrast, double sd_share,
                           double aim) {
  ContrastRead read;
  read.reading_sd_share = sd_share;
  read.reading = true_contrast * std::exp(random.normal(0.0, sd_share));
  const double weight = population_sd_share * population_sd_share /
                        (population_sd_share * population_sd_share + sd_share * sd_share);
  read.believed = aim * std::pow(read.reading / aim, weight);
  read.believed_u95 = 1.96 * read.believed * sd_share * std::sqrt(weight);
  return read;
}

}  // namespace bench
