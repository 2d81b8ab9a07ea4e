#pragma once

#include "words/number_text.h"

#include <fogline/process/judge_roll.h>

#include <string>
#include <vector>

namespace fogline {

/// Sentences of *What is not sure*: values that are missing and why, cautions aside.
std::vector<std::string> unsure_sentences(const JudgedRoll& record);

/// Sentences of *How it was measured*, one scan.
std::vector<std::string> method_sentences(const ScanMeasurement& scan);

/// How to scan this roll better, most needed first; only what applies to these scans.
std::vector<std::string> scan_advice(const JudgedRoll& record);

}  // namespace fogline
