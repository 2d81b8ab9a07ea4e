// Light or time: simulates rolls whose faults are known and prints how often the main cause is
// named right, whether the probabilities hold, and beside it the best that an estimator could do
// that knows the population itself. A report, not a test: it exits 0 whatever it finds.
#include "cause_limit.h"
#include "cause_scores.h"
#include "causes_of_scans.h"
#include "process/belief/weigh_light_and_time.h"
#include "process/causes/find_causes.h"
#include "process/prior_knowledge.h"
#include "roll_draws.h"

#include <fogline/tables/read_tables.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

namespace {

struct Options {
  int rolls = 300;
  int draws = 1000;
  int known = 100000;
  unsigned long long seed = 1;
  unsigned jobs = 2;
  bool list = false;
};

constexpr const char* usage =
    "causes_bench [--rolls N] [--draws N] [--known N] [--seed FIRST] [--jobs N] [--list]\n"
    "  --rolls N    rolls rendered as scans and measured (300)\n"
    "  --draws N    rolls judged from perfect readings, without rendering (1000)\n"
    "  --known N    rolls that the best estimator knows (100000)\n"
    "  --seed FIRST first seed (1)\n"
    "  --jobs N     scans at a time (2)\n"
    "  --list       one line a rendered roll\n";

bool parse(int argc, char** argv, Options& options) {
  for (int i = 1; i < argc; ++i) {
    const std::string word = argv[i];
    const auto value = [&] { return i + 1 < argc ? std::atoi(argv[++i]) : 0; };
    if (word == "--rolls") {
      options.rolls = value();
    } else if (word == "--draws") {
      options.draws = value();
    } else if (word == "--known") {
      options.known = std::max(1, value());
    } else if (word == "--seed") {
      options.seed = static_cast<unsigned long long>(value());
    } else if (word == "--jobs") {
      options.jobs = static_cast<unsigned>(std::max(1, value()));
    } else if (word == "--list") {
      options.list = true;
    } else {
      return false;
    }
  }
  return true;
}

/// How subjects differ from roll to roll (medians over frames), stops.
void print_subjects(const std::vector<bench::RollReading>& readings) {
  constexpr double log10_of_a_stop = 0.30103;
  double s = 0.0;
  double r = 0.0;
  double ss = 0.0;
  double rr = 0.0;
  double sr = 0.0;
  for (const bench::RollReading& reading : readings) {
    const double shadow = reading.shadow_log_h / log10_of_a_stop;
    const double range = (reading.highlight_log_h - reading.shadow_log_h) / log10_of_a_stop;
    s += shadow;
    r += range;
    ss += shadow * shadow;
    rr += range * range;
    sr += shadow * range;
  }
  const auto n = static_cast<double>(readings.size());
  const double shadow_sd = std::sqrt(ss / n - s * s / n / n);
  const double range_sd = std::sqrt(rr / n - r * r / n / n);
  std::printf(
      "  subjects, roll to roll: shadow %.2f stops from the speed point, sd %.2f; range "
      "%.2f stops, sd %.2f; shadow falls %.2f a stop of range\n",
      s / n, shadow_sd, r / n, range_sd, (s * r / n / n - sr / n) / (range_sd * range_sd));
}

/// What a well-made roll of the population reads, to hold against the trade's own table.
void print_usual(const std::vector<bench::RollReading>& readings) {
  std::vector<double> shadows;
  std::vector<double> highlights;
  constexpr double near_stops = 0.25;
  constexpr double near_contrast = 0.03;
  constexpr double aim = 0.58;
  for (const bench::RollReading& reading : readings) {
    if (std::abs(reading.faults.exposure_error_stops) < near_stops &&
        std::abs(reading.faults.contrast_index - aim) < near_contrast) {
      shadows.push_back(reading.shadow);
      highlights.push_back(reading.highlight);
    }
  }
  if (shadows.empty()) {
    return;
  }
  std::sort(shadows.begin(), shadows.end());
  std::sort(highlights.begin(), highlights.end());
  const auto at = [](const std::vector<double>& values, double share) {
    return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
  };
  std::printf(
      "  well-made rolls: shadow %.2f (%.2f to %.2f), highlight %.2f (%.2f to %.2f), in the "
      "scanner's light, 16 and 84 %%\n",
      at(shadows, 0.5), at(shadows, 0.16), at(shadows, 0.84), at(highlights, 0.5),
      at(highlights, 0.16), at(highlights, 0.84));
}

void print_draws(const std::vector<bench::RollReading>& readings, const bench::CauseLimit& limit,
                 const fogline::PriorKnowledge& knowledge) {
  std::printf("\n=== ROLLS READ PERFECTLY, NOT RENDERED ===\n");
  std::vector<bench::CauseCase> ours;
  std::vector<bench::CauseCase> best;
  std::vector<bench::CauseCase> blind;
  bench::Coverage coverage;
  const fogline::Aim aim = fogline::aim_for(nullptr, std::nullopt);
  for (const bench::RollReading& reading : readings) {
    const fogline::LightOrTime weighed = fogline::weigh_light_and_time(
        bench::as_measurement(reading), aim, knowledge.population, nullptr);
    const std::size_t truth = bench::true_cause(reading.faults);
    if (!weighed.judged()) {
      continue;
    }
    ours.push_back({bench::shares_of(*weighed.causes), truth});
    best.push_back({limit.causes(reading), truth});
    blind.push_back({{1.0, 0.0, 0.0, 0.0, 0.0}, truth});
    coverage.add(weighed, reading.faults);
  }
  bench::print_score("fogline", bench::score(ours));
  bench::print_score("best estimator", bench::score(best));
  bench::print_score("always 'normal'", bench::score(blind));
  coverage.print();
  bench::print_reliability("light or time", bench::all_said(ours));
  bench::print_confusion(ours);
}

}  // namespace

int main(int argc, char** argv) {
  Options options;
  if (!parse(argc, argv, options)) {
    std::fputs(usage, stderr);
    return 2;
  }
  // Tables as they come: a run takes minutes.
  std::setvbuf(stdout, nullptr, _IOLBF, 0);
  const fogline::PriorKnowledge knowledge = *fogline::shipped_prior_knowledge();
  const bench::RollDrawer drawer(options.seed);
  const bench::CauseLimit limit(
      drawer.draw(static_cast<std::size_t>(options.known), options.seed + 2000));
  if (options.draws > 0) {
    const std::vector<bench::RollReading> usual =
        drawer.draw(static_cast<std::size_t>(options.known), options.seed + 3000);
    print_subjects(usual);
    print_usual(usual);
    print_draws(drawer.draw(static_cast<std::size_t>(options.draws), options.seed + 1000), limit,
                knowledge);
  }
  if (options.rolls > 0) {
    const std::vector<bench::ScannedRoll> rolls =
        bench::scan_rolls(options.rolls, options.seed, options.jobs, knowledge);
    bench::print_scanned(rolls, limit, options.list);
  }
  return 0;
}
