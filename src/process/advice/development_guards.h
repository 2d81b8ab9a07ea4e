#pragma once

// Limits of what is advised, whatever prior knowledge says. They guard people and film, so they are
// no data that a file could change.

namespace fogline {

/// Warmer baths are never advised: gelatine softens, vapours rise (80 degrees Fahrenheit is the
/// most that the navy's and army's photographic courses allow, NAVEDTRA 14209 and SS0509).
inline constexpr double warmest_advised_c = 27.0;
/// Outside these a warning goes along (65 to 75 degrees Fahrenheit, the same courses).
inline constexpr double coolest_usual_c = 18.0;
inline constexpr double warmest_usual_c = 24.0;
/// Where a roll was developed too warm or too fast, this is gone back to: the usual temperature for
/// which times are published.
inline constexpr double standard_c = 20.0;
/// Shorter development gets uneven in hand tanks (common practice, no source).
inline constexpr double shortest_even_s = 300.0;

}  // namespace fogline
