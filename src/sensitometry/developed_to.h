#pragma once

#include <fogline/sensitometry/characteristic_curve.h>

#include <optional>

namespace fogline {

/// The curve that the same film would have, developed to another contrast index: every net density
/// grows in the same proportion and the inertia point stays (Sheppard & Mees 1907; fog, which grows
/// otherwise, is left out). Nothing where no proportion gives that index on the table.
std::optional<CurveTable> developed_to(const CurveTable& curve, double contrast_index);

}  // namespace fogline
