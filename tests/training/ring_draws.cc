#include "ring_draws.h"

#include "logistic_fit.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <cstdio>
#include <iterator>
#include <set>
#include <sstream>
#include <stdexcept>
#include <thread>
#include <utility>

namespace training {

namespace {

constexpr const char* heading =
    "seed,scan,right,seen,spread,alone,mean_radius_mm,mean_evidence,twins\n";

constexpr std::array kinds{bench::MarksScan::coarse, bench::MarksScan::fine,
                           bench::MarksScan::medium};

bench::MarksScan scan_named(const std::string& name) {
  const auto* const found = std::find_if(kinds.begin(), kinds.end(), [&](bench::MarksScan kind) {
    return name == bench::scan_name(kind);
  });
  if (found == kinds.end()) {
    throw std::runtime_error("no scan of marks is called " + name);
  }
  return *found;
}

double rounded(double value) {
  constexpr double hundred = 100.0;
  return std::round(value * hundred) / hundred;
}

}  // namespace

std::vector<DrawnRing> draw_rings(std::uint64_t first_seed, int seeds, unsigned jobs,
                                  const std::string& folder) {
  std::vector<std::vector<DrawnRing>> drawn(static_cast<std::size_t>(seeds) * kinds.size());
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    for (std::size_t i = next++; i < drawn.size(); i = next++) {
      const std::uint64_t seed = first_seed + i / kinds.size();
      const bench::MarksScan scan = kinds[i % kinds.size()];
      for (const RingExample& example : ring_examples(seed, scan, folder)) {
        drawn[i].push_back({seed, scan, example});
      }
    }
  };
  std::vector<std::jthread> threads;
  for (unsigned j = 1; j < jobs; ++j) {
    threads.emplace_back(work);
  }
  work();
  threads.clear();
  std::vector<DrawnRing> all;
  for (const std::vector<DrawnRing>& part : drawn) {
    all.insert(all.end(), part.begin(), part.end());
  }
  return all;
}

std::string text_of(const std::vector<DrawnRing>& rings) {
  std::string text = heading;
  for (const DrawnRing& ring : rings) {
    const fogline::RingSigns& signs = ring.example.signs;
    char line[160];
    std::snprintf(line, sizeof line, "%llu,%s,%d,%.6g,%.6g,%.6g,%.6g,%.6g,%g\n",
                  static_cast<unsigned long long>(ring.seed), bench::scan_name(ring.scan),
                  ring.example.right ? 1 : 0, signs.seen, signs.spread, signs.alone,
                  signs.mean_radius_mm, signs.mean_evidence, signs.twins);
    text += line;
  }
  return text;
}

std::vector<DrawnRing> rings_from(const std::string& text) {
  std::istringstream lines(text);
  std::string line;
  std::getline(lines, line);
  std::vector<DrawnRing> rings;
  while (std::getline(lines, line)) {
    DrawnRing ring;
    unsigned long long seed = 0;
    char scan[8] = "";
    int right = 0;
    fogline::RingSigns& signs = ring.example.signs;
    if (std::sscanf(line.c_str(), "%llu,%7[a-z],%d,%lf,%lf,%lf,%lf,%lf,%lf", &seed, scan, &right,
                    &signs.seen, &signs.spread, &signs.alone, &signs.mean_radius_mm,
                    &signs.mean_evidence, &signs.twins) != 9) {
      throw std::runtime_error("no example of a ring: " + line);
    }
    ring.seed = seed;
    ring.scan = scan_named(scan);
    ring.example.right = right != 0;
    rings.push_back(ring);
  }
  return rings;
}

fogline::RingScore fit_ring_score(const std::vector<DrawnRing>& rings) {
  std::vector<Example> examples;
  for (const DrawnRing& ring : rings) {
    const fogline::RingSigns& signs = ring.example.signs;
    examples.push_back({{signs.seen, signs.spread, signs.alone, std::log(signs.mean_radius_mm),
                         signs.mean_evidence, signs.twins},
                        ring.example.right});
  }
  const LogisticFit fit = fit_logistic(examples);
  return {rounded(fit.constant),   rounded(fit.weights[0]), rounded(fit.weights[1]),
          rounded(fit.weights[2]), rounded(fit.weights[3]), rounded(fit.weights[4]),
          rounded(fit.weights[5])};
}

ToldRings told_left_out(const std::vector<DrawnRing>& rings) {
  constexpr std::uint64_t parts = 5;
  // Odds of 4 to 1: the confidence from which marks are told.
  const double told_log_odds = std::log(4.0);
  ToldRings told;
  for (std::uint64_t part = 0; part < parts; ++part) {
    std::vector<DrawnRing> others;
    std::copy_if(rings.begin(), rings.end(), std::back_inserter(others),
                 [&](const DrawnRing& ring) { return ring.seed % parts != part; });
    const fogline::RingScore score = fit_ring_score(others);
    for (const DrawnRing& ring : rings) {
      if (ring.seed % parts == part &&
          fogline::ring_log_odds(ring.example.signs, score) >= told_log_odds) {
        ++told.all;
        told.right += ring.example.right ? 1 : 0;
      }
    }
  }
  return told;
}

std::string toml_of(const fogline::RingScore& score, const std::vector<DrawnRing>& rings) {
  std::set<std::pair<std::uint64_t, int>> scans;
  int right = 0;
  for (const DrawnRing& ring : rings) {
    scans.emplace(ring.seed, static_cast<int>(ring.scan));
    right += ring.example.right ? 1 : 0;
  }
  const ToldRings told = told_left_out(rings);
  char text[640];
  std::snprintf(
      text, sizeof text,
      "# As `fit_rings` prints it. On left-out fifths of its seeds %d of %d rings told with "
      "0.8 or more\n# are right.\n"
      "[ring.score]\n"
      "source = \"logistic regression by tests/training/fit_rings on %d rings among %d "
      "closed lines of %d simulated scans\"\n"
      "constant = %.2f\nseen = %.2f\nspread = %.2f\nalone = %.2f\nlog_radius = %.2f\n"
      "evidence = %.2f\ntwins = %.2f\n",
      told.right, told.all, right, static_cast<int>(rings.size()), static_cast<int>(scans.size()),
      score.constant, score.seen, score.spread, score.alone, score.log_radius, score.evidence,
      score.twins);
  return text;
}

}  // namespace training
