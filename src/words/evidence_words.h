#pragma once

#include <fogline/process/finding.h>

#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// What was seen of a roll, a sentence.
std::string evidence_sentence(const Fact<Evidence>& seen);
std::vector<std::string> evidence_sentences(const std::vector<Fact<Evidence>>& seen);

/// All that speaks for a finding, a sentence each.
std::vector<std::string> evidence_sentences(const Finding& finding);

/// A further measurement, as something to do and what it tells.
std::string_view measurement_sentence(FurtherMeasurement measurement);

}  // namespace fogline
