#pragma once

#include <fogline/base/quantity.h>

#include <optional>
#include <string>

namespace fogline {

/// How densities are printed: as density, or as stops of light held back (density / log10 2).
enum class DensityUnits { density, stops };

/// A value with its doubt as print shows it: "0.28" and "± 0.03". `doubt` is empty where the scan
/// gives only a bound or no doubt; a skew interval is "(0.85 to 1.20)".
struct NumberText {
  std::string value;
  std::string doubt;
};

/// A number with a fixed count of decimals for machines to read (coordinates of a drawing): a point
/// whatever the locale, a hyphen as minus, never "-0.0"; 0 where not finite.
std::string machine_number(double value, int decimals);

/// The same for people: a number with a fixed count of decimals, with a point whatever the locale,
/// a minus sign that is a minus (U+2212), and never "−0.00".
std::string text_from_number(double value, int decimals);

/// Decimals that a doubt leaves to its value: the doubt keeps one digit, two where it begins with
/// 1 (so that rounding shifts the doubt by a fifth at most); 0 to 3. A doubt of nothing: 2.
int decimals_from_doubt(double u95);

/// A density for print, never wider than its doubt. "at least 2.4" for a lower bound.
NumberText text_from_density(const Quantity& density, DensityUnits units);

/// The same in one piece, with its unit where the unit is stops: "0.28 ± 0.03", "0.9 ± 0.1 stops".
std::string sentence_from_density(const Quantity& density, DensityUnits units);

}  // namespace fogline
