// Simulates people who develop a roll, scan it, follow the advice and develop the next, and prints
// how near the aim they land: beside leaving the time alone, beside the usual power rule, and
// beside the best that the same information allows. A report, not a test: it exits 0 whatever it
// finds.
#include "advice_limit.h"
#include "advice_people.h"
#include "process/advice/advise.h"
#include "process/prior_knowledge.h"
#include "statistics.h"

#include <fogline/tables/read_tables.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string>
#include <vector>

namespace {

using bench::ContrastRead;
using bench::Person;

constexpr double aim_index = 0.58;
constexpr double tolerance = 0.05;
constexpr double narrow = 0.03;

struct Options {
  int people = 2000;
  int alternatives = 1500;
  unsigned long long seed = 1;
};

constexpr const char* usage =
    "advice_bench [--people N] [--alternatives N] [--seed N]\n"
    "  --people N        simulated people (2000)\n"
    "  --alternatives N  people that the limit weighs for each (1500; 0 leaves the limit out)\n"
    "  --seed N          first seed (1)\n";

bool parse(int argc, char** argv, Options& options) {
  for (int i = 1; i + 1 < argc; i += 2) {
    const long value = std::atol(argv[i + 1]);
    if (std::strcmp(argv[i], "--people") == 0) {
      options.people = static_cast<int>(value);
    } else if (std::strcmp(argv[i], "--alternatives") == 0) {
      options.alternatives = static_cast<int>(value);
    } else if (std::strcmp(argv[i], "--seed") == 0) {
      options.seed = static_cast<unsigned long long>(value);
    } else {
      return false;
    }
  }
  return argc % 2 == 1;
}

/// One way to choose the next time, and how it fares.
struct Way {
  std::string name;
  double wide = 0.0;
  double tight = 0.0;
  double squares = 0.0;
  int count = 0;

  void add(double contrast) {
    const double chance = bench::landing_chance(contrast, aim_index, tolerance);
    wide += chance;
    squares += chance * chance;
    tight += bench::landing_chance(contrast, aim_index, narrow);
    ++count;
  }
  void print() const {
    const double mean = wide / count;
    const double error = std::sqrt(std::max(0.0, squares / count - mean * mean) / count);
    std::printf("  %-50s %6.1f %% +- %.1f    %6.1f %%\n", name.c_str(), 100.0 * mean, 196.0 * error,
                100.0 * tight / count);
  }
};

/// New time = old time x (wanted / got)^1.7, at most 35 % either way.
double power_rule_min(double time_min, double contrast) {
  return time_min * std::clamp(std::pow(aim_index / contrast, 1.7), 0.65, 1.35);
}

double set_clock_min(double minutes) {
  const double step = minutes < 10.0 ? 0.25 : 0.5;
  return step * std::round(minutes / step);
}

struct Case {
  Person person;
  ContrastRead read;
  bool type_known = true;
  double next_scatter = 1.0;
  fogline::DevelopmentAdvice advice;
};

fogline::RollCard card_of(const Case& one, bool with_time) {
  fogline::RollCard card;
  card.name = "invented";
  if (one.type_known) {
    card.film_type = one.person.tabular ? fogline::FilmType::tabular : fogline::FilmType::cubic;
  }
  if (with_time) {
    card.development.time_s = 60.0 * one.person.time_min;
    card.development.temperature_c = one.person.temperature_c;
  }
  return card;
}

fogline::DevelopmentAdvice advise(const Case& one, bool with_time,
                                  const fogline::ProcessPriors& priors) {
  const fogline::RollMeasurement roll;
  fogline::LightOrTime light_or_time;
  light_or_time.causes = fogline::CauseProbabilities{};
  fogline::Quantity contrast;
  contrast.value = one.read.believed;
  contrast.u95 = one.read.believed_u95;
  light_or_time.contrast_index = contrast;
  const fogline::RollCard card = card_of(one, with_time);
  return fogline::advise({roll,
                          light_or_time,
                          {},
                          {aim_index, tolerance, fogline::AimSource::option, {}},
                          priors,
                          &card})
      .development;
}

struct Tables {
  Way same{"no change"};
  Way rule{"power rule 1.7 on the reading"};
  Way rule_believed{"power rule 1.7 on the contrast told"};
  Way rule_guarded{"power rule 1.7 on the contrast told, same guards"};
  Way advised{"advice, time and temperature on the card"};
  Way advised_change{"advice, no time on the card"};
  Way limit_guarded{"limit, same guards"};
  Way limit{"limit"};
  std::vector<double> log_ratio;
  int time_told = 0;
  int time_covered = 0;
  int contrast_told = 0;
  int contrast_covered = 0;
  int changed = 0;
  int moved = 0;
};

void add_coverage(const Case& one, Tables& tables) {
  const double at_c = *one.advice.temperature_c;
  const double minutes = *one.advice.time_s / 60.0;
  const double right = one.person.right_minutes(aim_index, at_c);
  tables.log_ratio.push_back(right > 0.0 ? std::log(minutes / right) : -INFINITY);
  if (one.advice.time_u95_s) {
    ++tables.time_told;
    tables.time_covered +=
        right > 0.0 && std::abs(minutes - right) * 60.0 <= *one.advice.time_u95_s ? 1 : 0;
  }
  const auto& predicted = one.advice.predicted_contrast_index;
  const double next = one.person.contrast(minutes, at_c) * one.next_scatter;
  ++tables.contrast_told;
  tables.contrast_covered += std::abs(next - predicted->value) <= predicted->u95 ? 1 : 0;
  tables.changed += minutes != one.person.time_min ? 1 : 0;
  tables.moved += at_c != one.person.temperature_c ? 1 : 0;
}

void add_case(const Case& one, const fogline::DevelopmentAdvice& change, const Options& options,
              Tables& tables) {
  const Person& person = one.person;
  const auto lands = [&](double minutes) { return person.contrast(minutes, person.temperature_c); };
  tables.same.add(lands(person.time_min));
  tables.rule.add(lands(set_clock_min(power_rule_min(person.time_min, one.read.reading))));
  const double told_min = set_clock_min(power_rule_min(person.time_min, one.read.believed));
  const bool keep = std::abs(one.read.believed - aim_index) <= tolerance;
  tables.rule_believed.add(lands(told_min));
  tables.rule_guarded.add(lands(keep ? person.time_min : told_min));
  tables.advised.add(person.contrast(*one.advice.time_s / 60.0, *one.advice.temperature_c));
  tables.advised_change.add(
      lands(set_clock_min(person.time_min * (1.0 + *change.change_percent / 100.0))));
  add_coverage(one, tables);
  if (options.alternatives > 0) {
    const auto best = bench::AdviceLimit(options.alternatives)
                          .best(person, one.type_known, one.read, aim_index, tolerance);
    tables.limit.add(lands(best.minutes));
    tables.limit_guarded.add(lands(keep ? person.time_min : set_clock_min(best.minutes)));
  }
}

void print(const Tables& tables, const Options& options) {
  std::printf("  %-50s %6s within 0.05      within 0.03\n", "share landing near the aim", "");
  for (const Way* way : {&tables.same, &tables.rule, &tables.rule_believed, &tables.rule_guarded,
                         &tables.advised_change, &tables.advised}) {
    way->print();
  }
  if (options.alternatives > 0) {
    tables.limit_guarded.print();
    tables.limit.print();
  }
  std::vector<double> ratios = tables.log_ratio;
  std::vector<double> sizes;
  for (const double ratio : ratios) {
    sizes.push_back(std::abs(ratio));
  }
  std::printf("  advised over right time: median %.3f, 95 %% within a factor %.2f\n",
              std::exp(bench::percentile(ratios, 0.5)), std::exp(bench::percentile(sizes, 0.95)));
  std::printf("  u95 of the time covers         %s\n",
              bench::share_text(tables.time_covered, tables.time_told).c_str());
  std::printf("  u95 of the predicted contrast  %s\n",
              bench::share_text(tables.contrast_covered, tables.contrast_told).c_str());
  std::printf("  time changed for %d of %d, temperature for %d\n\n", tables.changed,
              tables.contrast_told, tables.moved);
}

void run(const std::string& title, double least_sd, double greatest_sd, const Options& options) {
  const fogline::ProcessPriors priors = fogline::shipped_prior_knowledge()->process;
  Tables tables;
  for (int i = 0; i < options.people; ++i) {
    filmsim::Random random(options.seed, static_cast<std::uint64_t>(i));
    Case one;
    one.person = bench::draw_person(random);
    one.type_known = random.chance(0.7);
    const double scatter = std::exp(random.normal(0.0, bench::true_scatter_share));
    const double contrast =
        scatter * one.person.contrast(one.person.time_min, one.person.temperature_c);
    one.read =
        bench::read_contrast(random, contrast, random.uniform(least_sd, greatest_sd), aim_index);
    one.next_scatter = std::exp(random.normal(0.0, bench::true_scatter_share));
    one.advice = advise(one, true, priors);
    add_case(one, advise(one, false, priors), options, tables);
  }
  std::printf("%s, %d people\n", title.c_str(), options.people);
  print(tables, options);
}

}  // namespace

int main(int argc, char** argv) {
  Options options;
  if (!parse(argc, argv, options)) {
    std::fputs(usage, stderr);
    return 2;
  }
  run("contrast read to a standard uncertainty of 4 to 8 % (target, edge print)", 0.04, 0.08,
      options);
  run("contrast read to a standard uncertainty of 8 to 25 % (scenes)", 0.08, 0.25, options);
}
