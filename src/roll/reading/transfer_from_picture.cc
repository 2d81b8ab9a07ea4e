#include "roll/reading/transfer_from_picture.h"

#include "numerics/robust.h"

#include <fogline/base/quantity.h>

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Odds that decide, natural log: 10 to 1.
constexpr double deciding_log_odds = 2.3;

/// Wild rolls happen; no single number outweighs everything.
constexpr double tail_share = 0.02;

double normal_density(double value, const UsualDensity& usual) {
  const double z = (value - usual.density) / usual.sd;
  return std::exp(-0.5 * z * z) / usual.sd;
}

double base_log_likelihood(FilmFormat format, double density, const FilmKnowledge& films) {
  constexpr double outside = 0.05;
  if (format == FilmFormat::f135) {
    const double clear = films.clear_base_share_135;
    return std::log((1.0 - clear) * normal_density(density, films.grey_base) +
                    clear * normal_density(density, films.clear_base) + outside);
  }
  return std::log(normal_density(density, films.clear_base) + outside);
}

double log_likelihood(const UsualNet& usual, double net) {
  constexpr double least_net = 0.02;
  const double z = std::log(std::max(net, least_net) / usual.density);
  return std::log((1.0 - tail_share) * normal_density(z, {0.0, usual.sd_share}) + tail_share);
}

/// Decoding of IEC 61966-2-1.
double display_light(double code) {
  constexpr double linear_end = 0.04045;
  return code <= linear_end ? code / 12.92 : std::pow((code + 0.055) / 1.055, 2.4);
}

}  // namespace

CodeReading reading_of_codes(const CodeEvidence& evidence, const FilmKnowledge& films) {
  double log_odds = 0.0;  // of light against display curve
  // On a power-like curve ratios of codes carry over to ratios of light, whatever their level.
  if (evidence.clear_over_bare) {
    const double as_light = density_from_transmittance(*evidence.clear_over_bare);
    const double as_display = density_from_transmittance(display_light(*evidence.clear_over_bare));
    log_odds += base_log_likelihood(evidence.format, as_light, films) -
                base_log_likelihood(evidence.format, as_display, films);
  }
  const auto weigh = [&](const UsualNet& usual, double ratio) {
    log_odds += log_likelihood(usual, density_from_transmittance(ratio)) -
                log_likelihood(usual, density_from_transmittance(display_light(ratio)));
  };
  if (!evidence.dense_over_clear.empty()) {
    weigh(films.highlight, median(evidence.dense_over_clear));
  }
  if (evidence.print_over_clear) {
    weigh(films.edge_print, *evidence.print_over_clear);
  }
  if (evidence.leader_over_clear) {
    weigh(films.leader, *evidence.leader_over_clear);
  }
  if (evidence.opaque_over_light) {
    weigh(films.opaque, *evidence.opaque_over_light);
  }
  if (log_odds > deciding_log_odds) {
    return CodeReading::light;
  }
  return log_odds < -deciding_log_odds ? CodeReading::display_curve : CodeReading::cannot_tell;
}

}  // namespace fogline
