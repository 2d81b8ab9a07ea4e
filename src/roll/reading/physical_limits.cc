#include "roll/reading/physical_limits.h"

#include "roll/reading/scan_doubt.h"
#include "sensitometry/read_tone.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Grain, dust and rounding thin a picture's 2nd percentile by less.
constexpr double least_gap_density = 0.03;

}  // namespace

bool lies_below_support(const ScanInfo& info, const StripReading& reading,
                        const FilmKnowledge& films) {
  if (reading.zero == ZeroSource::none || !reading.clear) {
    return false;
  }
  const double u95 = u95_of_density(doubt_of_clear_film(info, reading), 0.0, 0.0);
  return reading.clear->visual < films.least_support_density - std::max(least_gap_density, u95);
}

bool lies_below_clear_film(const ScanInfo& info, const StripReading& reading, double shadow) {
  const double clear = reading.clear->visual;
  const double u95 =
      std::hypot(u95_of_range(doubt_of(info, reading), std::min(shadow, clear), clear),
                 coverage_factor_95 * reading.clear->scatter);
  return shadow < clear - std::max(least_gap_density, u95);
}

bool pictures_below_clear_film(const ScanInfo& info, const FilmStrip& film,
                               const StripReading& reading) {
  if (!reading.clear) {
    return false;
  }
  int below = 0;
  int read = 0;
  for (const FilmFrame& frame : film.frames) {
    const std::optional<FilmExtent> area = tone_area(frame);
    if (!area || frame.inferred || frame.cut) {
      continue;
    }
    const FrameTone tone = read_tone(reading.density, *area, reading.clear->visual, {}, INFINITY);
    if (tone.shadow) {
      ++read;
      below += lies_below_clear_film(info, reading, tone.shadow->value) ? 1 : 0;
    }
  }
  return 2 * below > read;
}

}  // namespace fogline
