#include "ring_draws.h"

#include "logistic_fit.h"

#include <array>
#include <atomic>
#include <cmath>
#include <cstdio>
#include <set>
#include <sstream>
#include <stdexcept>
#include <thread>
#include <utility>

namespace training {

namespace {

constexpr const char* heading = "seed,scan,right,seen,spread,alone,mean_radius_mm,mean_evidence\n";

double rounded(double value) {
  constexpr double hundred = 100.0;
  return std::round(value * hundred) / hundred;
}

}  // namespace

std::vector<DrawnRing> draw_rings(std::uint64_t first_seed, int seeds, unsigned jobs,
                                  const std::string& folder) {
  constexpr std::array kinds{bench::MarksScan::coarse, bench::MarksScan::fine};
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
    std::snprintf(line, sizeof line, "%llu,%s,%d,%.6g,%.6g,%.6g,%.6g,%.6g\n",
                  static_cast<unsigned long long>(ring.seed),
                  ring.scan == bench::MarksScan::fine ? "fine" : "coarse",
                  ring.example.right ? 1 : 0, signs.seen, signs.spread, signs.alone,
                  signs.mean_radius_mm, signs.mean_evidence);
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
    if (std::sscanf(line.c_str(), "%llu,%7[a-z],%d,%lf,%lf,%lf,%lf,%lf", &seed, scan, &right,
                    &signs.seen, &signs.spread, &signs.alone, &signs.mean_radius_mm,
                    &signs.mean_evidence) != 8) {
      throw std::runtime_error("no example of a ring: " + line);
    }
    ring.seed = seed;
    ring.scan = std::string(scan) == "fine" ? bench::MarksScan::fine : bench::MarksScan::coarse;
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
                         signs.mean_evidence},
                        ring.example.right});
  }
  const LogisticFit fit = fit_logistic(examples);
  return {rounded(fit.constant),   rounded(fit.weights[0]), rounded(fit.weights[1]),
          rounded(fit.weights[2]), rounded(fit.weights[3]), rounded(fit.weights[4])};
}

std::string toml_of(const fogline::RingScore& score, const std::vector<DrawnRing>& rings) {
  std::set<std::pair<std::uint64_t, int>> scans;
  int right = 0;
  for (const DrawnRing& ring : rings) {
    scans.emplace(ring.seed, static_cast<int>(ring.scan));
    right += ring.example.right ? 1 : 0;
  }
  char text[512];
  std::snprintf(text, sizeof text,
                "[ring.score]\n"
                "source = \"logistic regression by tests/training/fit_rings on %d rings among %d "
                "closed lines of %d simulated scans\"\n"
                "constant = %.2f\nseen = %.2f\nspread = %.2f\nalone = %.2f\nlog_radius = %.2f\n"
                "evidence = %.2f\n",
                right, static_cast<int>(rings.size()), static_cast<int>(scans.size()),
                score.constant, score.seen, score.spread, score.alone, score.log_radius,
                score.evidence);
  return text;
}

}  // namespace training
