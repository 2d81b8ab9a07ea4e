#pragma once

#include "roll/reading/strip_reading.h"

#include <fogline/base/scan_source.h>

namespace fogline {

// What no film can read. A number beyond these was read from something else, or in other light.

/// Clear film clearer than any support, all doubt counted: its two faces alone reflect some light.
bool lies_below_support(const ScanInfo& info, const StripReading& reading,
                        const FilmKnowledge& films);

/// A picture's density (shadow) so far below clear film that no doubt of their difference covers
/// it.
bool lies_below_clear_film(const ScanInfo& info, const StripReading& reading, double shadow);

/// Most of the strip's whole frames read so.
bool pictures_below_clear_film(const ScanInfo& info, const FilmStrip& film,
                               const StripReading& reading);

}  // namespace fogline
