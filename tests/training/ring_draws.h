// The draws that the shipped score of drying rings was fitted to, and the fit.
#pragma once

#include "ring_examples.h"

#include <string>
#include <vector>

namespace training {

/// One example with the scan it comes from.
struct DrawnRing {
  std::uint64_t seed = 0;
  bench::MarksScan scan = bench::MarksScan::fine;
  RingExample example;
};

/// Seeds are far from those of tests/bench/marks_bench, which judges what the fit is worth.
inline constexpr std::uint64_t first_ring_seed = 300001;

/// Closed lines of scans with marks, a coarse, a fine and one of 120 film each seed, on `jobs`
/// threads. The same for the same seeds.
std::vector<DrawnRing> draw_rings(std::uint64_t first_seed, int seeds, unsigned jobs,
                                  const std::string& folder);

/// Text with a heading and one line an example, to six digits; and the other way round. Throws
/// std::runtime_error for a line that isn't one.
std::string text_of(const std::vector<DrawnRing>& rings);
std::vector<DrawnRing> rings_from(const std::string& text);

/// Weights by logistic regression, rounded as they are shipped.
fogline::RingScore fit_ring_score(const std::vector<DrawnRing>& rings);

/// Closed lines told as rings with 0.8 or more, and how many of them are.
struct ToldRings {
  int all = 0;
  int right = 0;
};

/// Each fifth of the seeds judged by what is fitted to the others.
ToldRings told_left_out(const std::vector<DrawnRing>& rings);

/// The table `ring.score` of calibration/marks.toml, with what it is worth.
std::string toml_of(const fogline::RingScore& score, const std::vector<DrawnRing>& rings);

}  // namespace training
