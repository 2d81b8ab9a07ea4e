// Draws sensitometric tests of films of known curve, fits and reads them as the program does, and
// prints errors and coverage against the goals. A report, not a test: it exits 0 whatever it finds.
#include "curve_case.h"
#include "population_estimate.h"
#include "statistics.h"
#include "target_case.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <thread>
#include <vector>

#include <unistd.h>

namespace {

using bench::CurveCase;
using bench::CurveTest;

struct Options {
  int drawn = 500;
  int rendered = 20;
  unsigned long long seed = 1;
  unsigned jobs = 2;
};

constexpr const char* usage =
    "sensitometry_bench [--drawn N] [--rendered N] [--seed FIRST] [--jobs N]\n"
    "  --drawn N    tests drawn as densities, of each of the four kinds (500)\n"
    "  --rendered N tests rendered as scans and measured whole, of each of the kinds (20)\n"
    "  --seed FIRST first seed (1)\n"
    "  --jobs N     tests at a time (2)\n";

bool parse(int argc, char** argv, Options& options) {
  for (int i = 1; i < argc; ++i) {
    const std::string word = argv[i];
    const std::string value = i + 1 < argc ? argv[++i] : "0";
    if (word == "--drawn") {
      options.drawn = std::atoi(value.c_str());
    } else if (word == "--rendered") {
      options.rendered = std::atoi(value.c_str());
    } else if (word == "--seed") {
      options.seed = std::strtoull(value.c_str(), nullptr, 10);
    } else if (word == "--jobs") {
      options.jobs = static_cast<unsigned>(std::max(1, std::atoi(value.c_str())));
    } else {
      return false;
    }
  }
  return true;
}

/// Runs `count` tests by their seeds, some at a time.
template <typename Case, typename Run>
std::vector<Case> run_all(int count, const Options& options, const Run& run) {
  std::vector<Case> cases(static_cast<std::size_t>(count));
  std::atomic<std::size_t> next{0};
  std::vector<std::thread> workers;
  for (unsigned job = 0; job < options.jobs; ++job) {
    workers.emplace_back([&] {
      for (std::size_t i = next++; i < cases.size(); i = next++) {
        cases[i] = run(options.seed + i);
      }
    });
  }
  for (std::thread& worker : workers) {
    worker.join();
  }
  return cases;
}

/// What an estimator that knows the population leaves at the same tests.
void print_limit(const std::vector<CurveCase>& cases, std::size_t n,
                 std::optional<filmsim::CurveFamily> family) {
  std::vector<double> least;
  for (const CurveCase& item : cases) {
    if ((!family || item.film.family == *family) && n < item.least_errors.size() &&
        n < item.numbers.size() && item.numbers[n].compared) {
      least.push_back(std::abs(item.least_errors[n]));
    }
  }
  if (!least.empty()) {
    std::printf("  one who knows the population: %.4f (50 %%), %.4f (95 %%)\n",
                bench::percentile(least, 0.5), bench::percentile(least, 0.95));
  }
}

void print_numbers(const std::vector<CurveCase>& cases, double within) {
  for (std::size_t n = 0; n < std::size(bench::curve_numbers); ++n) {
    bench::Spread all;
    bench::Spread few;
    std::vector<bench::Spread> by_family(5);
    int untold = 0;
    for (const CurveCase& item : cases) {
      if (n >= item.numbers.size() || !item.numbers[n].compared) {
        ++untold;
        continue;
      }
      const bench::Compared& compared = *item.numbers[n].compared;
      all.add(compared);
      by_family[static_cast<std::size_t>(item.film.family)].add(compared);
      if (item.steps <= 6) {
        few.add(compared);
      }
    }
    bench::print_spread(bench::curve_numbers[n], all, within);
    for (std::size_t f = 0; f < by_family.size(); ++f) {
      const auto family = static_cast<filmsim::CurveFamily>(f);
      bench::print_spread("  " + filmsim::curve_family_name(family), by_family[f], within);
      print_limit(cases, n, family);
    }
    if (few.count > 0) {
      bench::print_spread("  5 or 6 steps", few, within);
    }
    std::printf("  not told: %d of %d\n", untold, static_cast<int>(cases.size()));
    print_limit(cases, n, {});
  }
}

std::vector<CurveCase> print_test(const char* name, CurveTest test, const Options& options,
                                  const bench::PopulationEstimator& best) {
  const auto cases = run_all<CurveCase>(options.drawn, options, [&](std::uint64_t seed) {
    return bench::run_curve_case(test, seed, best);
  });
  std::printf("\n");
  bench::print_spread_head(name, 0.02);
  print_numbers(cases, 0.02);
  int failed = 0;
  int wild = 0;
  std::vector<double> seconds;
  for (const CurveCase& item : cases) {
    failed += item.trouble.empty() ? 0 : 1;
    wild += item.wild_left_out;
    seconds.push_back(item.seconds);
  }
  std::printf("  no curve: %d; steps left out: %d; a fit takes %.3f s (median), %.3f s (95 %%)\n",
              failed, wild, bench::percentile(seconds, 0.5), bench::percentile(seconds, 0.95));
  return cases;
}

/// Goals for a calibrated scanner and exact exposures, beside what the steps allow.
void print_goals(const char* films, const std::vector<CurveCase>& cases) {
  constexpr struct {
    std::size_t number;
    double goal;
  } goals[] = {{0, 0.02}, {3, 0.03}};
  std::printf("\nCalibrated scanner, exact exposures, %s\n", films);
  for (const auto& [n, goal] : goals) {
    std::vector<double> errors;
    std::vector<double> least;
    for (const CurveCase& item : cases) {
      if (n < item.numbers.size() && item.numbers[n].compared) {
        const bench::Compared& compared = *item.numbers[n].compared;
        errors.push_back(std::abs(compared.value - compared.truth));
        least.push_back(std::abs(item.least_errors[n]));
      }
    }
    const double error = bench::percentile(errors, 0.95);
    char text[200];
    std::snprintf(
        text, sizeof text, "%s within %.2f (95 %%): %.4f; who knows the population %.4f, n %zu",
        bench::curve_numbers[n], goal, error, bench::percentile(least, 0.95), errors.size());
    bench::print_goal(text, error <= goal);
  }
}

void print_targets(const char* name, const filmsim::TargetWish& wish, const Options& options,
                   const std::string& folder) {
  const auto cases = run_all<bench::TargetCase>(options.rendered, options, [&](std::uint64_t seed) {
    return bench::run_target_case(wish, seed, folder);
  });
  std::printf("\n");
  bench::print_spread_head(name, 0.02);
  constexpr std::size_t numbers = 4;
  for (std::size_t n = 0; n < numbers; ++n) {
    bench::Spread spread;
    int untold = 0;
    for (const bench::TargetCase& item : cases) {
      if (n < item.numbers.size() && item.numbers[n].compared) {
        spread.add(*item.numbers[n].compared);
      } else {
        ++untold;
      }
    }
    bench::print_spread(bench::curve_numbers[n], spread, 0.02);
    std::printf("  not told: %d of %d\n", untold, static_cast<int>(cases.size()));
  }
  int steps = 0;
  int right = 0;
  int made = 0;
  int ambiguous = 0;
  int all_right = 0;
  for (const bench::TargetCase& item : cases) {
    steps += item.steps;
    right += item.steps_right;
    made += item.steps_made;
    ambiguous += item.ambiguous || item.place_doubtful ? 1 : 0;
    all_right += item.steps > 0 && item.steps_right == item.steps ? 1 : 0;
    if (!item.trouble.empty()) {
      std::printf("  seed %llu: %s\n", static_cast<unsigned long long>(item.seed),
                  item.trouble.c_str());
    } else if (item.steps_right < item.steps) {
      std::printf("  seed %llu: %d of %d steps have their own exposure%s\n",
                  static_cast<unsigned long long>(item.seed), item.steps_right, item.steps,
                  item.ambiguous || item.place_doubtful ? " (said to be doubtful)" : "");
    }
  }
  std::printf("  steps read: %s; with their own exposure: %s\n",
              bench::share_text(steps, made).c_str(), bench::share_text(right, steps).c_str());
  std::printf("  direction and place right: %s; told to be doubtful: %d\n",
              bench::share_text(all_right, static_cast<int>(cases.size())).c_str(), ambiguous);
}

}  // namespace

int main(int argc, char** argv) {
  Options options;
  if (!parse(argc, argv, options)) {
    std::fputs(usage, stderr);
    return 2;
  }
  const bench::PopulationEstimator best(bench::film_population);
  const auto wedges = print_test("printed wedges, calibrated", CurveTest::wedge, options, best);
  const auto brackets =
      print_test("brackets, exact times, calibrated", CurveTest::exact_bracket, options, best);
  print_test("brackets, shutters off by 0.1 to 0.3 stop", CurveTest::shutter_bracket, options,
             best);
  print_test("8 bits, uncalibrated, glare", CurveTest::rough_scan, options, best);
  print_goals("wedges", wedges);
  print_goals("brackets", brackets);
  // A logistic is the fit's own S of dispersed grains where that is symmetric.
  auto others = wedges;
  others.insert(others.end(), brackets.begin(), brackets.end());
  std::erase_if(others, [](const CurveCase& item) {
    return item.film.family == filmsim::CurveFamily::kLogistic;
  });
  print_goals("both, films of families that aren't fitted", others);
  std::erase_if(others, [](const CurveCase& item) {
    return item.film.family == filmsim::CurveFamily::kNormalSum;
  });
  print_goals("both, of these those that aren't one S", others);
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("sensitometry_bench-" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  using filmsim::TargetKind;
  print_targets("scans: brackets, exact, calibrated", {TargetKind::kBracket, 0.0, true, true},
                options, folder);
  print_targets("the same without stray light", {TargetKind::kBracket, 0.0, true, false}, options,
                folder);
  print_targets("scans: wedges along, calibrated", {TargetKind::kWedgeAlong, 0.0, true, true},
                options, folder);
  print_targets("the same without stray light", {TargetKind::kWedgeAlong, 0.0, true, false},
                options, folder);
  print_targets("scans: wedges across, calibrated", {TargetKind::kWedgeAcross, 0.0, true, true},
                options, folder);
  print_targets("scans: brackets, 0.2 stop, calibrated", {TargetKind::kBracket, 0.2, true, true},
                options, folder);
  print_targets("scans: brackets, 0.2 stop, 8 bits", {TargetKind::kBracket, 0.2, false, true},
                options, folder);
  print_targets("scans: wedges along, 8 bits", {TargetKind::kWedgeAlong, 0.0, false, true}, options,
                folder);
  std::filesystem::remove_all(folder);
  return 0;
}
