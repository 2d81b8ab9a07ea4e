// Calibrates simulated scanners by simulated wedges and prints how well film is read afterwards,
// beside what the same scans tell without. A report, not a test: it exits 0 whatever it finds.
#include "calibration_case.h"
#include "calibration_csv.h"
#include "statistics.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <string>
#include <thread>
#include <vector>

#include <unistd.h>

namespace {

using bench::CalibrationCase;
using bench::Compared;
using bench::OtherWay;
using bench::Spread;

struct Options {
  int rendered = 40;
  int small = 2000;
  int other = 100;
  unsigned long long seed = 1;
  unsigned jobs = 2;
  std::string csv;  // empty: none
};

constexpr const char* usage =
    "calibration_bench [--rendered N] [--small N] [--other N] [--seed FIRST] [--jobs N]\n"
    "                  [--csv FILE]\n"
    "  --rendered N  large wedge scans with all that may go wrong with a wedge (40)\n"
    "  --small N     small wedge scans, half of them of other silver than the film's (2000)\n"
    "  --other N     calibrations by layers and by shutter times (100 each)\n"
    "  --seed FIRST  first seed (1)\n"
    "  --jobs N      scanners at a time (2)\n"
    "  --csv FILE    write one row a number\n";

bool parse(int argc, char** argv, Options& options) {
  for (int i = 1; i < argc; ++i) {
    const std::string word = argv[i];
    const std::string value = i + 1 < argc ? argv[++i] : "0";
    if (word == "--rendered") {
      options.rendered = std::atoi(value.c_str());
    } else if (word == "--small") {
      options.small = std::atoi(value.c_str());
    } else if (word == "--other") {
      options.other = std::atoi(value.c_str());
    } else if (word == "--seed") {
      options.seed = std::strtoull(value.c_str(), nullptr, 10);
    } else if (word == "--jobs") {
      options.jobs = static_cast<unsigned>(std::max(1, std::atoi(value.c_str())));
    } else if (word == "--csv") {
      options.csv = value;
    } else {
      return false;
    }
  }
  return true;
}

template <typename Result>
std::vector<Result> run_all(int count, unsigned jobs, const std::function<Result(int)>& one) {
  std::vector<Result> results(static_cast<std::size_t>(count));
  std::atomic<int> next = 0;
  const auto work = [&] {
    for (int i = next++; i < count; i = next++) {
      results[static_cast<std::size_t>(i)] = one(i);
    }
  };
  std::vector<std::thread> threads;
  for (unsigned j = 1; j < jobs; ++j) {
    threads.emplace_back(work);
  }
  work();
  for (std::thread& thread : threads) {
    thread.join();
  }
  return results;
}

void print_wedges(const std::vector<CalibrationCase>& cases) {
  int calibrated = 0;
  int to_find = 0;
  int found = 0;
  int right = 0;
  int dirty = 0;
  int named = 0;
  int falsely = 0;
  int steps = 0;
  std::vector<double> residuals;
  std::vector<double> stray;
  int stray_within = 0;
  for (const CalibrationCase& item : cases) {
    if (!item.trouble.empty()) {
      continue;
    }
    ++calibrated;
    to_find += item.steps_to_find;
    found += std::min(item.steps_found, item.steps_to_find);
    steps += item.steps_found;
    right += item.direction_right ? 1 : 0;
    dirty += item.dirty ? 1 : 0;
    named += item.dirty_named ? 1 : 0;
    falsely += item.falsely_named;
    residuals.push_back(item.residual_rms);
    stray.push_back(std::abs(item.stray_error));
    stray_within += std::abs(item.stray_error) <= 1.96 * item.stray_doubt ? 1 : 0;
  }
  const auto all = static_cast<int>(cases.size());
  std::printf("  calibrated                 %s\n", bench::share_text(calibrated, all).c_str());
  std::printf("  steps found                %s\n", bench::share_text(found, to_find).c_str());
  std::printf("  direction and place right  %s\n", bench::share_text(right, calibrated).c_str());
  std::printf("  dirty steps named          %s\n", bench::share_text(named, dirty).c_str());
  std::printf("  clean steps named dirty    %s\n", bench::share_text(falsely, steps).c_str());
  std::printf("  residual rms, median       %.4f\n", bench::percentile(residuals, 0.5));
  std::printf("  |far stray light told less true|, share, median %.4f, 95 %% %.4f\n",
              bench::percentile(stray, 0.5), bench::percentile(stray, 0.95));
  std::printf("  the same within its u95    %s\n",
              bench::share_text(stray_within, calibrated).c_str());
  int listed = 0;
  for (const CalibrationCase& item : cases) {
    if (!item.trouble.empty() && listed++ < 8) {
      std::printf("  not calibrated: seed %llu, %s\n", static_cast<unsigned long long>(item.seed),
                  item.trouble.c_str());
    }
    if (item.trouble.empty() && item.dirty && !item.dirty_named) {
      const filmsim::WedgePlan& wedge = item.plan.wedge;
      std::printf("  dirt not named: seed %llu, step %d, density %.2f, dirt %.3f, limit %.2f\n",
                  static_cast<unsigned long long>(item.seed), wedge.dirty_step + 1,
                  wedge.densities[static_cast<std::size_t>(wedge.dirty_step)], wedge.dirt_density,
                  item.limit);
    }
  }
}

/// Of the small scans one in so many is calibrated again without stray light.
constexpr int limit_part = 10;

struct Rms {
  double squares = 0.0;
  int count = 0;

  void add(double error) {
    squares += error * error;
    ++count;
  }
  [[nodiscard]] double value() const { return count > 0 ? std::sqrt(squares / count) : NAN; }
};

/// Errors of patches up to a density, of cases that a class takes.
Rms rms_of(const std::vector<CalibrationCase>& cases, double to_density, bool calibrated,
           const std::function<bool(const CalibrationCase&)>& in_class) {
  Rms rms;
  for (const CalibrationCase& item : cases) {
    if (!item.trouble.empty() || !in_class(item)) {
      continue;
    }
    for (const Compared& patch : calibrated ? item.patches : item.patches_uncalibrated) {
      if (patch.truth <= to_density && !patch.at_least) {
        rms.add(patch.error());
      }
    }
  }
  return rms;
}

void print_errors(const std::vector<CalibrationCase>& cases) {
  const auto silver16 = [](const CalibrationCase& c) { return c.like_silver && c.bits == 16; };
  const auto other16 = [](const CalibrationCase& c) { return !c.like_silver && c.bits == 16; };
  const auto eight = [](const CalibrationCase& c) { return c.bits == 8; };
  struct Row {
    const char* name;
    std::function<bool(const CalibrationCase&)> in_class;
  };
  std::printf("\nrms error of density, patches up to each calibration's limit\n");
  std::printf("  %-36s %14s %14s %14s %14s\n", "", "with, to 2.0", "with, to 3.0", "without, 2.0",
              "without, 3.0");
  for (const Row& row : {Row{"16 bits, silver like the wedge's", silver16},
                         Row{"16 bits, other silver", other16}, Row{"8 bits", eight}}) {
    const auto text = [&](double to, bool calibrated) {
      const Rms rms = rms_of(cases, to, calibrated, row.in_class);
      char cell[32];
      std::snprintf(cell, sizeof cell, "%.4f (%d)", rms.value(), rms.count);
      return std::string(cell);
    };
    std::printf("  %-36s %14s %14s %14s %14s\n", row.name, text(2.0, true).c_str(),
                text(3.0, true).c_str(), text(2.0, false).c_str(), text(3.0, false).c_str());
  }
  const double to_two = rms_of(cases, 2.0, true, silver16).value();
  const double to_three = rms_of(cases, 3.0, true, silver16).value();
  bench::print_goal("rms to 2.0, 16 bits, like silver: 0.015", to_two <= 0.015);
  bench::print_goal("rms to 3.0, 16 bits, like silver: 0.04", to_three <= 0.04);
}

/// What stray light costs, which no wedge alone tells apart from the response: the same scanners
/// without any, and the part of them that has little.
void print_limit(const std::vector<CalibrationCase>& cases,
                 const std::vector<CalibrationCase>& without_stray_light) {
  const auto silver16 = [](const CalibrationCase& c) { return c.like_silver && c.bits == 16; };
  constexpr double little = 0.01;
  const auto little_stray = [&](const CalibrationCase& c) {
    return silver16(c) && c.plan.wedge.scanner.glare.share < little;
  };
  const auto print = [](const char* name, const Rms& two, const Rms& three) {
    std::printf("  %-36s %14.4f %14.4f   (%d)\n", name, two.value(), three.value(), three.count);
  };
  std::printf("what stray light costs, 16 bits, silver like the wedge's\n");
  print("scanners with less than 1 % of it", rms_of(cases, 2.0, true, little_stray),
        rms_of(cases, 3.0, true, little_stray));
  print("the same scanners without any", rms_of(without_stray_light, 2.0, true, silver16),
        rms_of(without_stray_light, 3.0, true, silver16));
}

/// One patch a scan, chosen by the seed: patches of a scan share their errors.
void print_patch_coverage(const std::vector<CalibrationCase>& cases) {
  bench::print_spread_head("patches, calibrated, one a scan", 0.02);
  const std::array<double, 5> bands{0.0, 0.5, 1.0, 2.0, 3.2};
  std::array<Spread, 4> by_band;
  Spread sixteen;
  Spread eight;
  std::array<Spread, 2> silver;
  for (const CalibrationCase& item : cases) {
    std::vector<Compared> told;
    std::copy_if(item.patches.begin(), item.patches.end(), std::back_inserter(told),
                 [](const Compared& c) { return !c.at_least; });
    if (told.empty()) {
      continue;
    }
    const Compared& patch = told[(item.seed * 2654435761ULL >> 8U) % told.size()];
    for (std::size_t b = 0; b < by_band.size(); ++b) {
      if (patch.truth >= bands[b] && patch.truth < bands[b + 1]) {
        by_band[b].add(patch);
      }
    }
    (item.bits == 8 ? eight : sixteen).add(patch);
    silver[item.like_silver ? 0 : 1].add(patch);
  }
  const std::array<const char*, 4> names{"to 0.5", "0.5 to 1", "1 to 2", "2 to 3.2"};
  for (std::size_t b = 0; b < by_band.size(); ++b) {
    bench::print_spread(names[b], by_band[b], 0.02);
  }
  bench::print_spread("16 bits", sixteen, 0.02);
  bench::print_spread("8 bits", eight, 0.02);
  bench::print_spread("silver like the wedge's", silver[0], 0.02);
  bench::print_spread("other silver", silver[1], 0.02);
}

using Numbers = std::function<std::optional<Compared>(const bench::ScanCase&)>;

void print_number(const std::vector<CalibrationCase>& cases, const std::string& name,
                  const Numbers& number) {
  bench::print_spread_head(name, 0.02);
  Spread with;
  Spread without;
  Spread without_straight;
  std::array<Spread, 2> by_bits;
  std::array<Spread, 2> by_told;
  std::array<Spread, 3> by_device;
  std::array<Spread, 3> by_fitness;
  const std::array<const char*, 3> devices{"flatbed", "camera", "film scanner"};
  const std::array<const char*, 3> fitness{"measured", "comparable", "indicative"};
  for (const CalibrationCase& item : cases) {
    if (const auto compared = number(item.strip_uncalibrated)) {
      without.add(*compared);
      if (item.plan.wedge.scanner.response.straight) {
        without_straight.add(*compared);
      }
    }
    const auto compared = item.trouble.empty() ? number(item.strip) : std::nullopt;
    if (!compared) {
      continue;
    }
    with.add(*compared);
    by_bits[item.bits == 8 ? 1 : 0].add(*compared);
    by_told[item.device_told ? 0 : 1].add(*compared);
    for (std::size_t i = 0; i < devices.size(); ++i) {
      if (item.device == devices[i]) {
        by_device[i].add(*compared);
      }
      if (item.strip.fitness == fitness[i]) {
        by_fitness[i].add(*compared);
      }
    }
  }
  bench::print_spread("without calibration", without, 0.02);
  bench::print_spread("  the file tells the curve", without_straight, 0.02);
  bench::print_spread("with calibration", with, 0.02);
  bench::print_spread("  16 bits", by_bits[0], 0.02);
  bench::print_spread("  8 bits", by_bits[1], 0.02);
  bench::print_spread("  device told", by_told[0], 0.02);
  bench::print_spread("  device not told", by_told[1], 0.02);
  for (std::size_t i = 0; i < devices.size(); ++i) {
    bench::print_spread(std::string("  ") + devices[i], by_device[i], 0.02);
  }
  for (std::size_t i = 0; i < fitness.size(); ++i) {
    bench::print_spread(std::string("  fitness ") + fitness[i], by_fitness[i], 0.02);
  }
}

void print_strips(const std::vector<CalibrationCase>& cases) {
  print_number(cases, "base plus fog", [](const bench::ScanCase& c) { return c.base_fog; });
  const std::array<const char*, 4> tones{"frame shadow", "frame middle", "frame highlight",
                                         "frame range"};
  for (std::size_t i = 0; i < tones.size(); ++i) {
    print_number(cases, tones[i], [i](const bench::ScanCase& c) { return c.tone[i]; });
  }
  print_number(cases, "contrast index", [](const bench::ScanCase& c) { return c.contrast; });
}

void print_other(const char* name, const std::vector<OtherWay>& ways) {
  bench::print_spread_head(name, 0.02);
  std::array<Spread, 3> at;
  int failed = 0;
  for (const OtherWay& way : ways) {
    failed += way.trouble.empty() ? 0 : 1;
    for (std::size_t i = 0; i < std::min<std::size_t>(3, way.densities.size()); ++i) {
      at[i].add(way.densities[i]);
    }
  }
  const std::array<const char*, 3> densities{"density 0.5", "density 1.0", "density 1.5"};
  for (std::size_t i = 0; i < at.size(); ++i) {
    bench::print_spread(densities[i], at[i], 0.02);
  }
  std::printf("  not calibrated: %d of %zu\n", failed, ways.size());
}

}  // namespace

int main(int argc, char** argv) {
  Options options;
  if (!parse(argc, argv, options)) {
    std::fputs(usage, stderr);
    return 2;
  }
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("calibration-bench-" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  const std::string place = folder.string();
  const auto run = [&](int count, bool large, bool stray_light = true) {
    return run_all<CalibrationCase>(count, options.jobs, [&](int i) {
      return bench::run_calibration_case({large, i % 2 == 0, stray_light},
                                         options.seed + static_cast<unsigned>(i), place);
    });
  };
  const std::vector<CalibrationCase> rendered = run(options.rendered, true);
  std::printf("\n=== %d LARGE WEDGE SCANS: joints, dirt, scratches, tape, masks ===\n",
              options.rendered);
  print_wedges(rendered);
  print_errors(rendered);
  const std::vector<CalibrationCase> small = run(options.small, false);
  std::printf("\n=== %d SMALL WEDGE SCANS AND STRIPS ===\n", options.small);
  print_wedges(small);
  print_errors(small);
  print_limit(small, run(options.small / limit_part, false, false));
  print_patch_coverage(small);
  print_strips(small);
  if (!options.csv.empty()) {
    std::vector<CalibrationCase> all = rendered;
    all.insert(all.end(), small.begin(), small.end());
    bench::write_calibration_csv(options.csv, all);
  }
  std::printf("\n=== OTHER WAYS TO CALIBRATE ===\n");
  print_other("layers of one known density",
              run_all<OtherWay>(options.other, options.jobs, [&](int i) {
                return bench::run_layers_case(options.seed + static_cast<unsigned>(i), place);
              }));
  print_other("shutter times within 0.1 stop",
              run_all<OtherWay>(options.other, options.jobs, [&](int i) {
                return bench::run_bracket_case(options.seed + static_cast<unsigned>(i), place);
              }));
  std::filesystem::remove_all(folder);
  return 0;
}
