#pragma once

#include "words/fact_words.h"

#include <fogline/base/known.h>

#include <span>
#include <string>

namespace fogline {

/// Of every reason, in the order of its members. Reasons of scans, frames, marks and tints are
/// sentences; those of a curve and of a target are clauses that go on after a colon.
std::span<const FactWords<Unknown>> unknown_words();

/// Why a value is absent.
std::string unknown_sentence(const WhyUnknown& why);

/// True where somebody said why a value is absent.
bool is_told(const WhyUnknown& why);

/// Why a value is absent; empty where nobody said why.
std::string reason_sentence(const WhyUnknown& why);

/// The same; empty where the value is there.
template <typename T>
std::string told_reason(const Known<T>& known) {
  return known ? std::string() : reason_sentence(known.why());
}

}  // namespace fogline
