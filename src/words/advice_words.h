#pragma once

#include <fogline/process/judge_roll.h>

#include <string>
#include <vector>

namespace fogline {

/// Why the next roll's development is what it is, or why nothing can be advised; a sentence or two
/// each. Empty where nobody said why.
std::vector<std::string> development_sentences(const DevelopmentAdvice& advice, const Aim& aim);

/// The same of exposure.
std::vector<std::string> exposure_sentences(const ExposureAdvice& advice);

/// Why light wasn't judged: what the curve says of its speed point counts too. Empty where nobody
/// said why.
std::string light_reason_sentence(const WhyUnknown& why);

}  // namespace fogline
