// How well base plus fog could be read from a scan by one who knows where everything is.
#pragma once

#include "simulator/render.h"

#include <optional>

namespace bench {

/// Error (density) of the median over all neighbouring true perforations of a scan: light of the
/// clear film midway between the two over the light in them, true tone curve, stray light left as
/// it is. Uneven light falls out, as the two stand 2.4 mm away. Absent without perforations, where
/// their light is clipped, and for JPEG files (the codes before compression aren't what a reader
/// sees).
std::optional<double> base_fog_error_between_holes(const filmsim::Simulated& simulated);

/// The same of a scan of the same film by the same device without stray light and black offset:
/// what is left are noise, blur, rounding, dirt and the angle of the light, which nobody can take
/// back.
std::optional<double> base_fog_limit_error(filmsim::Scenario scenario);

}  // namespace bench
