#pragma once

#include "words/number_text.h"

#include <fogline/marks/mark.h>
#include <fogline/tint/tint.h>

#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// What is said of a scan's colour, a sentence each.
std::vector<std::string> tint_sentences(const Tint& tint, DensityUnits units);

/// A tint in short: "dye left", "yellow stain", ...
std::string_view tint_name(TintKind kind);

/// "drying mark", "air bell", ...; in the plural "drying marks".
std::string_view mark_name(MarkKind kind);
std::string_view marks_name(MarkKind kind);

/// "denser by 0.12", "thinner by 0.30"; a dash where it isn't known.
std::string mark_contrast_text(const Mark& mark, DensityUnits units);
/// "1.4 mm", to a tenth; "under 0.1 mm".
std::string mark_size_text(const Mark& mark);

/// How many of which kind: "3 drying marks, 1 scratch"; most first.
std::string mark_counts(const std::vector<const Mark*>& marks);

}  // namespace fogline
