#pragma once

#include <fogline/process/process_priors.h>

namespace fogline {

/// Priors of development and baths from `development.toml` and `baths.toml`.
ProcessPriors process_priors_from_calibration();

}  // namespace fogline
