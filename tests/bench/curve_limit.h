// The best that any reader of a sensitometric test could do who knew which family of curves the
// film was drawn from, and how its numbers are distributed.
#pragma once

#include "curve_case.h"

namespace bench {

/// Standard deviations of the numbers of `curve_numbers`, in their order, that the best estimator
/// keeps: the inverse of the steps' information and that of the population (van Trees 1968), which
/// is exact where the curve changes straight with what is unknown.
std::vector<double> least_deviations(const filmsim::CurveSettings& film,
                                     const fogline::ExposedSteps& exposed);

/// 95th percentile of |error| of normal errors with these standard deviations, one a test.
double percentile_of_normals(const std::vector<double>& deviations, double share);

}  // namespace bench
