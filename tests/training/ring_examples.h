// Closed lines that the search for drying rings looks at on simulated scans, each with the truth:
// what the weights of the rings' score are fitted to.
#pragma once

#include "bench/marks_case.h"
#include "marks/find_rings.h"

#include <cstdint>
#include <string>
#include <vector>

namespace training {

/// A closed line, and whether it is a drop's rim.
struct RingExample {
  fogline::RingSigns signs;
  bool right = false;
};

/// Rings of one scan. Of closed lines that overlap, the one with most evidence stands for all: the
/// search meets every ring from many places. `folder` holds the scan for a moment.
std::vector<RingExample> ring_examples(std::uint64_t seed, bench::MarksScan scan,
                                       const std::string& folder);

}  // namespace training
