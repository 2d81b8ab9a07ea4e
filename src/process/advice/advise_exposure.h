#pragma once

#include "process/advice/advise.h"

namespace fogline {

/// The next roll's exposure: the lasting part of this roll's error, in thirds of a stop; none where
/// `time_first` says that the time is to be changed before it.
ExposureAdvice advise_exposure(const AdviceGround& ground, bool time_first = false);

/// This roll's light is off by this many of its u95; 0 where it isn't known.
double sureness_of_light(const AdviceGround& ground);

/// The nearest exposure index, by ratio, that dials carry: 3 to 6400 in thirds of a stop (the
/// arithmetic speeds of ISO 6; values from memory).
double nearest_exposure_index(double exposure_index);

}  // namespace fogline
