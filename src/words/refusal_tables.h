#pragma once

#include "words/fact_words.h"

#include <fogline/base/refusal.h>

#include <span>

namespace fogline {

// The English of `Refusal`, in parts that follow the order of its members. `{file}` is the file
// that was refused; every text is a sentence that says what to do.

/// Files and outputs of any kind.
std::span<const FactWords<Refusal>> refusals_of_files();
/// Pictures.
std::span<const FactWords<Refusal>> refusals_of_pictures();
/// Roll cards.
std::span<const FactWords<Refusal>> refusals_of_cards();
/// Wedge references.
std::span<const FactWords<Refusal>> refusals_of_references();
/// Scanner files.
std::span<const FactWords<Refusal>> refusals_of_scanner_files();
/// Tables of knowledge that the program brings along: a broken build alone shows these.
std::span<const FactWords<Refusal>> refusals_of_knowledge();
/// Scans that calibrate nothing, or that can't be measured as asked.
std::span<const FactWords<Refusal>> refusals_of_calibration();

/// Reports that can't be read back.
std::span<const FactWords<Refusal>> refusals_of_reports();

/// All of them, in the order of the members.
std::span<const FactWords<Refusal>> refusal_words();

}  // namespace fogline
