#pragma once

#include <string>

namespace fogline {

/// A number with `digits` after the point, whatever the locale.
std::string fixed_text(double value, int digits);

/// A time on the clock, minutes and seconds: `9:30`.
std::string clock_text(double seconds);

/// A probability or share of 0 to 1 in whole per cent: `48 %`.
std::string percent_text(double share);

/// A number of stops in thirds, without sign: `1/3 of a stop`, `1 2/3 stops`.
std::string stops_text(double stops);

}  // namespace fogline
