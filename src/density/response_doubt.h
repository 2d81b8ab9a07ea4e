#pragma once

#include "density/fit_response.h"
#include "density/response_channel.h"

#include <vector>

namespace fogline {

/// Noise of a light's codes as a visual density, by the fitted response and its stray light.
double noise_density(const ShownLight& light, const std::vector<ChannelResponse>& channels,
                     const ScannerCalibration& calibration);

/// Fills a calibration's doubt over density, what was shown and its limits.
void add_doubt(ScannerCalibration& calibration, const ResponseProblem& problem,
               const std::vector<ChannelResponse>& channels);

}  // namespace fogline
