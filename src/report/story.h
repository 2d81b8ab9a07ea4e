#pragma once

#include <fogline/record/roll_record.h>
#include <fogline/report/number_text.h>

#include <string>
#include <vector>

namespace fogline {

/// Sentences of *What is not sure*: values that are missing and why, cautions aside.
std::vector<std::string> unsure_sentences(const RollRecord& record);

/// Sentences of *How it was measured*, one scan.
std::vector<std::string> method_sentences(const ScanMeasurement& scan);

/// How to scan this roll better, most needed first; only what applies to these scans.
std::vector<std::string> scan_advice(const RollRecord& record);

}  // namespace fogline
