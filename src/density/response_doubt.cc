#include "density/response_doubt.h"

#include "density/callier.h"

#include <fogline/base/quantity.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <tuple>

namespace fogline {

namespace {

/// Doubt is told at so many densities in one.
constexpr double doubts_per_density = 10.0;
/// A film lies in other light than the wedge did: its stray light differs by about this part of an
/// evenly lit field's.
constexpr double usual_other_field = 0.15;
/// Limit of use: a doubt of this much, 95 %.
constexpr double limit_u95 = 0.1;

PerChannel<double> weights_of(std::size_t channels) {
  return channels == 1 ? PerChannel<double>{1.0, 0.0, 0.0} : visual_weights;
}

/// Straight between points; the ends' values beyond them.
double value_at(const std::vector<double>& falling_x, const std::vector<double>& y, double x) {
  const auto below =
      std::find_if(falling_x.begin(), falling_x.end(), [&](double place) { return place <= x; });
  if (below == falling_x.begin()) {
    return y.front();
  }
  if (below == falling_x.end()) {
    return y.back();
  }
  const auto i = static_cast<std::size_t>(below - falling_x.begin());
  const double share = (x - falling_x[i]) / (falling_x[i - 1] - falling_x[i]);
  return y[i] + share * (y[i - 1] - y[i]);
}

/// Surroundings of the used lights, over density.
struct FieldOverDensity {
  std::vector<double> falling_density;
  std::array<std::vector<double>, std::tuple_size_v<StrayField>> field;

  explicit FieldOverDensity(const ResponseProblem& problem) {
    for (auto light = problem.lights.rbegin(); light != problem.lights.rend(); ++light) {
      if (!light->step.left_out) {
        falling_density.push_back(light->step.reference_density);
        for (std::size_t k = 0; k < field.size(); ++k) {
          PerChannel<double> channels{};
          for (std::size_t c = 0; c < channels.size(); ++c) {
            channels[c] = light->stray_field[c][k];
          }
          field[k].push_back(visual_from_channels(channels, problem.channels));
        }
      }
    }
  }
  [[nodiscard]] StrayField at(double density) const {
    StrayField here{};
    for (std::size_t k = 0; k < here.size(); ++k) {
      here[k] = value_at(falling_density, field[k], density);
    }
    return here;
  }
};

/// What a logarithm of all light's doubt makes in diffuse density, where so much of the light (a
/// share of the bare) is stray.
double per_density(double density, double stray, double callier) {
  const double through = transmittance_from_density(directed_density(density, callier));
  return (through + stray) / (through * directed_slope(density, callier));
}

CalibratedDoubt doubt_at(double density, const ScannerCalibration& calibration,
                         const StrayField& field, const std::vector<ChannelResponse>& channels) {
  const CalibratedStray& stray = calibration.stray;
  CalibratedDoubt doubt;
  doubt.density = density;
  doubt.field = field;
  const double on_field = stray.share * mean_of(field);
  const double total =
      transmittance_from_density(directed_density(density, calibration.callier)) + on_field;
  const double per_log = per_density(density, on_field, calibration.callier);
  const PerChannel<double> weights = weights_of(channels.size());
  for (std::size_t c = 0; c < channels.size(); ++c) {
    const double of_total = value_at(channels[c].log_light, channels[c].doubt, std::log10(total));
    doubt.fit += weights[c] * of_total * per_log;
  }
  doubt.stray = usual_other_field * std::hypot(stray.share_doubt, 0.5 * stray.share) / total *
                per_log / std::numbers::ln10;
  return doubt;
}

}  // namespace

double noise_density(const ShownLight& light, const std::vector<ChannelResponse>& channels,
                     const ScannerCalibration& calibration) {
  const double density = light.step.reference_density;
  const PerChannel<double> weights = weights_of(channels.size());
  double noise = 0.0;
  for (std::size_t c = 0; c < channels.size(); ++c) {
    const double code = light.step.code[c];
    const CodeCurve& curve = channels[c].curve;
    const double bright = curve.light_of(code + light.code_doubt[c]);
    const double dark = std::max(1e-9, curve.light_of(code));
    const double stray = calibration.stray.share * mean_of(light.stray_field[c]);
    noise += weights[c] * std::log10(std::max(1.0, bright / dark)) *
             per_density(density, stray, calibration.callier);
  }
  return noise;
}

void add_doubt(ScannerCalibration& calibration, const ResponseProblem& problem,
               const std::vector<ChannelResponse>& channels) {
  const CalibratedStray& stray = calibration.stray;
  const FieldOverDensity field(problem);
  constexpr double least_shown = 0.1;
  double lowest = -std::numeric_limits<double>::infinity();
  for (const ChannelResponse& channel : channels) {
    lowest = std::max(lowest, channel.lowest_log_light);
  }
  double deepest = 0.0;
  double lightest = problem.bare ? 0.0 : std::numeric_limits<double>::infinity();
  for (const ShownLight& light : problem.lights) {
    const double density = light.step.reference_density;
    const double total =
        transmittance_from_density(directed_density(density, calibration.callier)) +
        stray.share * mean_of(field.at(density));
    if (!light.step.left_out && std::log10(total) >= lowest - least_shown) {
      deepest = std::max(deepest, density);
      lightest = std::min(lightest, density);
    }
  }
  calibration.shown_from_density = std::min(lightest, deepest);
  calibration.shown_to_density = deepest;
  constexpr double least_step = 0.01;
  for (int i = 0; i / doubts_per_density < deepest - least_step; ++i) {
    const double density = i / doubts_per_density;
    calibration.doubt.push_back(doubt_at(density, calibration, field.at(density), channels));
  }
  calibration.doubt.push_back(doubt_at(deepest, calibration, field.at(deepest), channels));
  calibration.density_limit = deepest;
  for (const CalibratedDoubt& doubt : calibration.doubt) {
    if (coverage_factor_95 * std::hypot(doubt.fit, doubt.stray) > limit_u95) {
      calibration.density_limit = doubt.density;
      break;
    }
  }
}

}  // namespace fogline
