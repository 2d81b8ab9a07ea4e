// Fits the score of drying rings to simulated scans and prints its table for
// calibration/marks.toml.
#include "ring_draws.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include <unistd.h>

namespace {

constexpr const char* usage =
    "fit_rings [--seeds N] [--seed FIRST] [--jobs N] [--write FILE]\n"
    "fit_rings --examples FILE\n"
    "  --seeds N        draws a coarse scan, a fine one and one of 120 film for each of N seeds "
    "(200)\n"
    "  --seed FIRST     first seed (300001)\n"
    "  --jobs N         scans at a time (2)\n"
    "  --write FILE     writes the examples drawn there\n"
    "  --examples FILE  fits examples drawn before (tests/training/rings.csv)\n";

struct Options {
  int seeds = 200;
  std::uint64_t seed = training::first_ring_seed;
  unsigned jobs = 2;
  std::string write;
  std::string examples;
};

bool parse(int argc, char** argv, Options& options) {
  for (int i = 1; i + 1 < argc; i += 2) {
    const std::string word = argv[i];
    const char* value = argv[i + 1];
    if (word == "--seeds") {
      options.seeds = std::max(1, std::atoi(value));
    } else if (word == "--seed") {
      options.seed = std::strtoull(value, nullptr, 10);
    } else if (word == "--jobs") {
      options.jobs = static_cast<unsigned>(std::max(1, std::atoi(value)));
    } else if (word == "--write") {
      options.write = value;
    } else if (word == "--examples") {
      options.examples = value;
    } else {
      return false;
    }
  }
  return argc % 2 == 1;
}

std::vector<training::DrawnRing> drawn(const Options& options) {
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("fit-rings-" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  auto rings = training::draw_rings(options.seed, options.seeds, options.jobs, folder);
  std::filesystem::remove_all(folder);
  if (!options.write.empty()) {
    std::ofstream(options.write) << training::text_of(rings);
  }
  return rings;
}

std::vector<training::DrawnRing> read(const std::string& path) {
  std::ifstream file(path);
  return training::rings_from({std::istreambuf_iterator<char>(file), {}});
}

}  // namespace

int main(int argc, char** argv) {
  Options options;
  if (!parse(argc, argv, options)) {
    std::fputs(usage, stderr);
    return 2;
  }
  const std::vector<training::DrawnRing> rings =
      options.examples.empty() ? drawn(options) : read(options.examples);
  if (rings.empty()) {
    std::fputs("no closed line was drawn: nothing to fit\n", stderr);
    return 1;
  }
  std::fputs(training::toml_of(training::fit_ring_score(rings), rings).c_str(), stdout);
  return 0;
}
