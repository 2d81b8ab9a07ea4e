// Simulates scans of known truth, measures them as the program does, and prints how far off it is,
// against the goals, with the sampling error of every share. A report, not a test: it exits 0
// whatever it finds.
#include "csv.h"
#include "scan_case.h"
#include "simulator/scenario_sampling.h"
#include "tables.h"

#include <algorithm>
#include <atomic>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <map>
#include <string>
#include <thread>
#include <vector>

#include <unistd.h>

namespace {

struct Options {
  int large = 96;
  int tiny = 2000;
  int foreign = 60;
  std::string kind;  // empty: every kind
  std::string csv;   // empty: none
  unsigned long long seed = 1000;
  unsigned jobs = 2;
  bool misses = false;
  bool time = true;
};

constexpr const char* usage =
    "accuracy_bench [--large N] [--tiny N] [--foreign N] [--kind KIND] [--seed FIRST]\n"
    "               [--jobs N] [--no-time] [--list-misses] [--csv FILE]\n"
    "  --large N    full scans, spread over all kinds (96)\n"
    "  --tiny N     small pieces of film for coverage (2000)\n"
    "  --foreign N  scans by laws that fogline wasn't built on, half of them camera pictures (60)\n"
    "  --kind KIND  only this kind, --large of them (--foreign of a foreign one), no others\n"
    "  --seed FIRST first seed of each kind (1000)\n"
    "  --jobs N     scans at a time (2)\n"
    "  --no-time    leave the large files out whose reading is timed\n"
    "  --list-misses  list the cases worth a look, with kind and seed\n"
    "  --csv FILE   write one row a scan\n";

bool has(const std::vector<std::string>& kinds, const std::string& kind) {
  return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

bool parse(int argc, char** argv, Options& options) {
  for (int i = 1; i < argc; ++i) {
    const std::string word = argv[i];
    const auto value = [&] { return i + 1 < argc ? std::string(argv[++i]) : std::string("0"); };
    if (word == "--large") {
      options.large = std::atoi(value().c_str());
    } else if (word == "--tiny") {
      options.tiny = std::atoi(value().c_str());
    } else if (word == "--foreign") {
      options.foreign = std::atoi(value().c_str());
    } else if (word == "--kind") {
      options.kind = value();
    } else if (word == "--seed") {
      options.seed = std::strtoull(value().c_str(), nullptr, 10);
    } else if (word == "--jobs") {
      options.jobs = static_cast<unsigned>(std::max(1, std::atoi(value().c_str())));
    } else if (word == "--list-misses") {
      options.misses = true;
    } else if (word == "--csv") {
      options.csv = value();
    } else if (word == "--no-time") {
      options.time = false;
    } else {
      return false;
    }
  }
  if (!options.kind.empty()) {
    options.tiny = 0;
    const bool foreign = has(filmsim::foreign_kinds(), options.kind);
    (foreign ? options.large : options.foreign) = 0;
    return foreign || has(filmsim::scenario_kinds(), options.kind);
  }
  return true;
}

std::vector<bench::CaseName> large_names(const Options& options) {
  std::vector<std::string> kinds;
  for (const std::string& kind : filmsim::scenario_kinds()) {
    const bool wanted =
        options.kind.empty() ? kind != "tiny" && kind != "bracket-135" : kind == options.kind;
    if (wanted) {
      kinds.push_back(kind);
    }
  }
  std::vector<bench::CaseName> names;
  for (int i = 0; i < options.large && !kinds.empty(); ++i) {
    const std::size_t kind = static_cast<std::size_t>(i) % kinds.size();
    names.push_back({kinds[kind], options.seed + static_cast<std::uint64_t>(i) / kinds.size()});
  }
  return names;
}

/// Every second one a camera picture, the others by turns.
std::vector<bench::CaseName> foreign_names(const Options& options) {
  const std::string camera = "foreign-camera";
  std::vector<std::string> kinds = filmsim::foreign_kinds();
  std::vector<bench::CaseName> names;
  if (!options.kind.empty()) {
    kinds = {options.kind};
  } else {
    std::vector<std::string> by_turns;
    for (const std::string& kind : kinds) {
      if (kind != camera) {
        by_turns.push_back(camera);
        by_turns.push_back(kind);
      }
    }
    kinds = by_turns;
  }
  std::map<std::string, std::uint64_t> drawn;
  for (int i = 0; i < options.foreign; ++i) {
    const std::string& kind = kinds[static_cast<std::size_t>(i) % kinds.size()];
    names.push_back({kind, options.seed + drawn[kind]++});
  }
  return names;
}

std::vector<bench::ScanCase> run(const std::vector<bench::CaseName>& names, unsigned jobs,
                                 const std::string& folder) {
  std::vector<bench::ScanCase> cases(names.size());
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    for (std::size_t i = next++; i < names.size(); i = next++) {
      cases[i] = bench::run_case(names[i], folder, FOGLINE_PROGRAM);
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
  return cases;
}

void print_tables(const char* title, const std::vector<bench::ScanCase>& cases, bool misses) {
  if (cases.empty()) {
    return;
  }
  std::printf("\n=== %s: %zu ===\n", title, cases.size());
  bench::print_base_fog(cases);
  bench::print_frames(cases);
  bench::print_tone(cases);
  bench::print_other_numbers(cases);
  bench::print_fitness(cases);
  bench::print_film(cases);
  if (misses) {
    bench::print_misses(cases);
  }
}

void print_foreign(const std::vector<bench::ScanCase>& assumed,
                   const std::vector<bench::ScanCase>& foreign) {
  if (foreign.empty()) {
    return;
  }
  std::vector<bench::ScanCase> scanners;
  std::vector<bench::ScanCase> cameras;
  for (const bench::ScanCase& scan : foreign) {
    (scan.finished ? cameras : scanners).push_back(scan);
  }
  bench::print_glance({{"as assumed", &assumed},
                       {"foreign scanners", &scanners},
                       {"foreign camera pictures", &cameras},
                       {"foreign, all", &foreign}});
  bench::print_base_fog_by_class(foreign);
  bench::print_glance_misses(foreign);
}

}  // namespace

int main(int argc, char** argv) {
  Options options;
  if (!parse(argc, argv, options)) {
    std::fputs(usage, stderr);
    return 2;
  }
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("accuracy-bench-" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  const std::vector<bench::ScanCase> large = run(large_names(options), options.jobs, folder);
  std::vector<bench::CaseName> tiny_names;
  for (int i = 0; i < options.tiny; ++i) {
    tiny_names.push_back({"tiny", options.seed + static_cast<std::uint64_t>(i)});
  }
  const std::vector<bench::ScanCase> tiny = run(tiny_names, options.jobs, folder);
  const std::vector<bench::ScanCase> foreign = run(foreign_names(options), options.jobs, folder);
  std::vector<bench::Timing> timings;
  if (options.time) {
    constexpr double megapixels = 35.0;
    timings.push_back(bench::time_large(megapixels, false, folder));
    timings.push_back(bench::time_large(megapixels, true, folder));
  }
  std::filesystem::remove_all(folder);

  print_tables("AS ASSUMED, FULL SCANS", large, options.misses);
  print_tables("AS ASSUMED, SMALL SCANS", tiny, options.misses);
  bench::print_time(timings, large);
  print_foreign(large, foreign);
  if (!options.csv.empty()) {
    std::vector<bench::ScanCase> all = large;
    all.insert(all.end(), tiny.begin(), tiny.end());
    all.insert(all.end(), foreign.begin(), foreign.end());
    bench::write_csv(options.csv, all);
  }
  return 0;
}
