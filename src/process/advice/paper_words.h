#pragma once

#include <fogline/process/roll_card.h>
#include <fogline/roll/roll_measurement.h>

#include <optional>
#include <string>

namespace fogline {

/// A paper's contrast in words, by its log exposure range (ISO R / 100): very soft, soft, normal,
/// hard, very hard. Limits half-way between the ranges that a public article on matching negative
/// and paper gives: 1.60 to 1.80, 1.30, 1.10, 0.90, 0.40 to 0.60.
std::string paper_word(double log_exposure_range);

/// How to print the roll: "Print on hard paper, ISO range about R 90." Nothing where the roll's
/// range isn't known or is a lower bound only.
std::optional<std::string> printing_hint(const RollMeasurement& roll,
                                         std::optional<PrintWith> print_with);

}  // namespace fogline
