#pragma once

#include "numerics/least_squares.h"

namespace fogline {

/// Least squares with coefficients held at or above zero, by the active-set method of Lawson &
/// Hanson (1974, chapter 23). Standard errors are left empty: at an active bound they have no
/// meaning.
LinearFit fit_non_negative(const LinearProblem& problem);

}  // namespace fogline
