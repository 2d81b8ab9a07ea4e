#pragma once

#include <fogline/base/quantity.h>
#include <fogline/roll/roll_measurement.h>

#include <optional>

namespace fogline {

/// Contrast of a paper.
enum class PaperGrade { very_soft, soft, normal, hard, very_hard };

/// The grade whose log exposure range (ISO R / 100) lies nearest. Limits half-way between the
/// ranges that a public article on matching negative and paper gives: 1.60 to 1.80, 1.30, 1.10,
/// 0.90, 0.40 to 0.60.
PaperGrade paper_grade(double log_exposure_range);

/// Log exposure range that a roll asks of the paper in diffusion light: the median range of its
/// frames. Nothing where that isn't known, or is a lower bound, which no paper can be named for.
std::optional<Quantity> asked_paper_range(const RollMeasurement& roll);

}  // namespace fogline
