#pragma once

#include "words/fact_words.h"

#include <fogline/base/caution.h>

#include <span>
#include <string>

namespace fogline {

/// Of every kind, in the order of its members. `{why}` is what lies behind a caution, `{Why}` the
/// same as the sentence's beginning, `{steps}` a list of steps.
std::span<const FactWords<CautionKind>> caution_words();

/// What was seen and what to do, one or two sentences.
std::string caution_sentence(const Caution& caution);

}  // namespace fogline
