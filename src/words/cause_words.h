#pragma once

#include <fogline/process/finding.h>

#include <string>
#include <string_view>

namespace fogline {

/// Parts of the report in which a finding is told.
enum class FindingPlace { light_or_time, clear_film, marks, scan };

FindingPlace place_of(Cause cause);

/// A cause in a few words, for the verdict's "Also seen:"; empty where it isn't said there.
std::string_view cause_words(Cause cause);

/// What a finding states, in a sentence or two.
std::string finding_message(const Finding& finding);

/// The same and how sure it is: "Dye is left in the film. (97 %)"
std::string finding_sentence(const Finding& finding);

}  // namespace fogline
