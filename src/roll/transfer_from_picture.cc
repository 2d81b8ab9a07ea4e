#include "roll/transfer_from_picture.h"

#include <fogline/base/channels.h>
#include <fogline/numerics/robust.h>

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Odds that decide, natural log: 20 to 1.
constexpr double deciding_log_odds = 3.0;
/// Median and spread (natural log) of a roll's net highlights.
constexpr double usual_highlight = 1.05;
constexpr double highlight_spread = 0.38;
/// Wild rolls happen; no single number outweighs everything.
constexpr double tail_share = 0.02;

double normal_density(double value, double mean, double sd) {
  const double z = (value - mean) / sd;
  return std::exp(-0.5 * z * z) / sd;
}

double base_log_likelihood(FilmFormat format, double density) {
  constexpr double outside = 0.05;
  if (format == FilmFormat::f135) {
    return std::log(0.8 * normal_density(density, 0.28, 0.07) +
                    0.2 * normal_density(density, 0.12, 0.04) + outside);
  }
  return std::log(normal_density(density, 0.13, 0.05) + outside);
}

double highlight_log_likelihood(double net) {
  const double z = std::log(std::max(net, 0.02) / usual_highlight);
  return std::log((1.0 - tail_share) * normal_density(z, 0.0, highlight_spread) + tail_share);
}

/// Decoding of IEC 61966-2-1.
double display_light(double code) {
  constexpr double linear_end = 0.04045;
  return code <= linear_end ? code / 12.92 : std::pow((code + 0.055) / 1.055, 2.4);
}

}  // namespace

CodeReading reading_of_codes(const CodeEvidence& evidence) {
  double log_odds = 0.0;  // of light against display curve
  // On a power-like curve ratios of codes carry over to ratios of light, whatever their level.
  if (evidence.clear_over_bare) {
    const double as_light = density_from_transmittance(*evidence.clear_over_bare);
    const double as_display = density_from_transmittance(display_light(*evidence.clear_over_bare));
    log_odds += base_log_likelihood(evidence.format, as_light) -
                base_log_likelihood(evidence.format, as_display);
  }
  if (!evidence.dense_over_clear.empty()) {
    const double ratio = median(evidence.dense_over_clear);
    log_odds += highlight_log_likelihood(density_from_transmittance(ratio)) -
                highlight_log_likelihood(density_from_transmittance(display_light(ratio)));
  }
  if (log_odds > deciding_log_odds) {
    return CodeReading::light;
  }
  return log_odds < -deciding_log_odds ? CodeReading::display_curve : CodeReading::cannot_tell;
}

}  // namespace fogline
