#pragma once

#include "words/number_text.h"

#include <fogline/process/judge_roll.h>

#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// Something that isn't sure.
struct Unsure {
  std::string sentence;
  /// The reason that it tells, where it is one for which a value of a scan is missing.
  std::optional<Unknown> why;
};

/// What isn't sure: values that are missing and why, cautions aside.
std::vector<Unsure> unsure_of(const JudgedRoll& record);
/// The same as the sentences of *What is not sure*.
std::vector<std::string> unsure_sentences(const JudgedRoll& record);

/// Sentences of *How it was measured*, one scan.
std::vector<std::string> method_sentences(const ScanMeasurement& scan);

/// How to scan this roll better, most needed first; only what applies to these scans.
std::vector<std::string> scan_advice(const JudgedRoll& record);

}  // namespace fogline
