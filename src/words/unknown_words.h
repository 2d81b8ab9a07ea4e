#pragma once

#include <fogline/base/known.h>

#include <string>

namespace fogline {

/// Why a value isn't known, a sentence. Empty where nobody said so.
std::string reason_sentence(const WhyUnknown& why);

}  // namespace fogline
