#include "roll/reading/transfer_from_picture.h"

#include "numerics/robust.h"

#include <fogline/base/channels.h>

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Odds that decide, natural log: 10 to 1.
constexpr double deciding_log_odds = 2.3;

/// Median of a net density and its spread (standard deviation of the natural logarithm).
struct Usual {
  double density = 1.0;
  double spread = 0.4;
};
constexpr Usual highlight{1.05, 0.38};
constexpr Usual edge_print{1.10, 0.32};
constexpr Usual leader{2.30, 0.25};
/// Opaque areas read stray light: 0.2 to 3 %.
constexpr Usual opaque{2.10, 0.20};
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

double log_likelihood(Usual usual, double net) {
  constexpr double least_net = 0.02;
  const double z = std::log(std::max(net, least_net) / usual.density);
  return std::log((1.0 - tail_share) * normal_density(z, 0.0, usual.spread) + tail_share);
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
  const auto weigh = [&](Usual usual, double ratio) {
    log_odds += log_likelihood(usual, density_from_transmittance(ratio)) -
                log_likelihood(usual, density_from_transmittance(display_light(ratio)));
  };
  if (!evidence.dense_over_clear.empty()) {
    weigh(highlight, median(evidence.dense_over_clear));
  }
  if (evidence.print_over_clear) {
    weigh(edge_print, *evidence.print_over_clear);
  }
  if (evidence.leader_over_clear) {
    weigh(leader, *evidence.leader_over_clear);
  }
  if (evidence.opaque_over_light) {
    weigh(opaque, *evidence.opaque_over_light);
  }
  if (log_odds > deciding_log_odds) {
    return CodeReading::light;
  }
  return log_odds < -deciding_log_odds ? CodeReading::display_curve : CodeReading::cannot_tell;
}

}  // namespace fogline
