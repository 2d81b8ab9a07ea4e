// The tables of the accuracy bench.
#pragma once

#include "scan_case.h"

#include <vector>

namespace bench {

/// Names of ScanCase::tone.
inline constexpr const char* tone_names[] = {"shadow", "middle", "highlight", "range"};

/// Whether the scan was refused, or read above the light path or above base only, as its truth
/// asks.
bool judged_as_expected(const ScanCase& scan);

void print_base_fog(const std::vector<ScanCase>& cases);
void print_frames(const std::vector<ScanCase>& cases);
void print_tone(const std::vector<ScanCase>& cases);
void print_other_numbers(const std::vector<ScanCase>& cases);
void print_fitness(const std::vector<ScanCase>& cases);
void print_film(const std::vector<ScanCase>& cases);
void print_time(const std::vector<Timing>& timings, const std::vector<ScanCase>& cases);
/// Cases of one column of the table at a glance.
struct NamedCases {
  const char* name;
  const std::vector<ScanCase>* cases;
};

/// Film, holes, frames, impossible numbers, wrong tints, time and memory, side by side.
void print_glance(const std::vector<NamedCases>& columns);
void print_base_fog_by_class(const std::vector<ScanCase>& cases);
/// Foreign cases on which something failed at a glance.
void print_glance_misses(const std::vector<ScanCase>& cases);

/// Cases worth looking at, with what is wrong.
void print_misses(const std::vector<ScanCase>& cases);

}  // namespace bench
