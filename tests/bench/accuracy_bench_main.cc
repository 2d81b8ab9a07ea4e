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
#include <string>
#include <thread>
#include <vector>

#include <unistd.h>

namespace {

struct Options {
  int large = 96;
  int tiny = 2000;
  std::string kind;  // empty: every kind
  std::string csv;   // empty: none
  unsigned long long seed = 1000;
  unsigned jobs = 2;
  bool misses = false;
  bool time = true;
};

constexpr const char* usage =
    "accuracy_bench [--large N] [--tiny N] [--kind KIND] [--seed FIRST] [--jobs N]\n"
    "               [--no-time] [--list-misses] [--csv FILE]\n"
    "  --large N    full scans, spread over all kinds (96)\n"
    "  --tiny N     small pieces of film for coverage (2000)\n"
    "  --kind KIND  only this kind, --large of them, no small ones\n"
    "  --seed FIRST first seed of each kind (1000)\n"
    "  --jobs N     scans at a time (2)\n"
    "  --no-time    leave the large files out whose reading is timed\n"
    "  --list-misses  list the cases worth a look, with kind and seed\n"
    "  --csv FILE   write one row a scan\n";

bool parse(int argc, char** argv, Options& options) {
  for (int i = 1; i < argc; ++i) {
    const std::string word = argv[i];
    const auto value = [&] { return i + 1 < argc ? std::string(argv[++i]) : std::string("0"); };
    if (word == "--large") {
      options.large = std::atoi(value().c_str());
    } else if (word == "--tiny") {
      options.tiny = std::atoi(value().c_str());
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
  const std::vector<std::string>& kinds = filmsim::scenario_kinds();
  if (!options.kind.empty()) {
    options.tiny = 0;
    return std::find(kinds.begin(), kinds.end(), options.kind) != kinds.end();
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

std::vector<bench::ScanCase> run(const std::vector<bench::CaseName>& names, unsigned jobs,
                                 const std::string& folder) {
  std::vector<bench::ScanCase> cases(names.size());
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    for (std::size_t i = next++; i < names.size(); i = next++) {
      cases[i] = bench::run_case(names[i], folder);
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
  std::vector<bench::Timing> timings;
  if (options.time) {
    constexpr double megapixels = 35.0;
    timings.push_back(bench::time_large(megapixels, false, folder));
    timings.push_back(bench::time_large(megapixels, true, folder));
  }
  std::filesystem::remove_all(folder);

  print_tables("FULL SCANS", large, options.misses);
  print_tables("SMALL SCANS", tiny, options.misses);
  bench::print_time(timings, large);
  if (!options.csv.empty()) {
    std::vector<bench::ScanCase> all = large;
    all.insert(all.end(), tiny.begin(), tiny.end());
    bench::write_csv(options.csv, all);
  }
  return 0;
}
