#pragma once

#include <fogline/base/known.h>

#include <string>
#include <string_view>

namespace fogline {

/// Why a value isn't known, a sentence. Empty where nobody said so.
std::string reason_sentence(const WhyUnknown& why);

/// For a value of which nobody said why it isn't known.
std::string_view untold_sentence();

}  // namespace fogline
