#include "density/fit_response.h"

#include "density/callier.h"
#include "density/response_channel.h"
#include "density/response_doubt.h"
#include "numerics/robust.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace fogline {

namespace {

/// Shares of stray light that are weighed where nothing opaque told it.
constexpr int share_count = 13;
constexpr double greatest_share = 0.036;
/// Real responses aren't drawn from the smooth process they are fitted with. The evidence of their
/// shape counts by this power only (a tempered likelihood), and the share of stray light that it
/// tells is doubted so many times more: less of either tells it too surely on invented scanners of
/// many shapes, more loses what published tables tell of theirs.
constexpr double shape_power = 0.5;
constexpr double shape_doubt = 1.3;
/// A light is left out beyond so many standard deviations, and so much density.
constexpr double wild_residual = 4.0;
constexpr double wild_density = 0.015;
/// At least this part of the lights stays.
constexpr double kept_part = 2.0 / 3.0;
constexpr std::size_t fewest_lights = 4;

/// What the response's shape says of the share of stray light, against its prior.
CalibratedStray weighed_stray(const ResponseProblem& problem) {
  if (problem.stray.share_doubt <= 0.0) {
    return problem.stray;
  }
  std::array<double, share_count> log_weights{};
  for (std::size_t i = 0; i < share_count; ++i) {
    const double share = greatest_share * static_cast<double>(i) / (share_count - 1);
    const ResponsePoints points(problem, share);
    const double away = (share - problem.stray.share) / problem.stray.share_doubt;
    log_weights[i] = -0.5 * away * away;
    for (int c = 0; c < problem.channels; ++c) {
      const SmoothCurve fit = fit_smooth_curve(points.of_channel(c), {}, points.bare_log_light(c));
      // Channels share wedge and optics: together they say little more than one.
      log_weights[i] += shape_power * fit.log_evidence / problem.channels;
    }
  }
  const double best = *std::max_element(log_weights.begin(), log_weights.end());
  double sum = 0.0;
  double first = 0.0;
  double second = 0.0;
  for (std::size_t i = 0; i < share_count; ++i) {
    const double share = greatest_share * static_cast<double>(i) / (share_count - 1);
    const double weight = std::exp(log_weights[i] - best);
    sum += weight;
    first += weight * share;
    second += weight * share * share;
  }
  CalibratedStray stray = problem.stray;
  stray.share = first / sum;
  const double cell = greatest_share / (share_count - 1);
  stray.share_doubt =
      shape_doubt *
      std::sqrt(std::max(0.0, second / sum - stray.share * stray.share) + cell * cell / 12.0);
  return stray;
}

/// The light that fits the others least; -1 where all fit.
int wildest_light(const ResponseProblem& problem, double stray_share) {
  const ResponsePoints points(problem, stray_share);
  std::vector<std::vector<double>> residuals_of_point(points.lights().size());
  std::vector<std::vector<double>> densities_of_point(points.lights().size());
  for (int c = 0; c < problem.channels; ++c) {
    const std::vector<CurvePoint> channel = points.of_channel(c);
    const std::vector<double> residuals = left_out_residuals(channel);
    for (std::size_t i = 0; i < residuals.size(); ++i) {
      residuals_of_point[i].push_back(std::abs(residuals[i]));
    }
  }
  int wildest = -1;
  double greatest = wild_residual;
  for (std::size_t i = 0; i < residuals_of_point.size(); ++i) {
    const double residual = median(residuals_of_point[i]);
    if (points.lights()[i] >= 0 && residual > greatest) {
      greatest = residual;
      wildest = points.lights()[i];
    }
  }
  return wildest;
}

/// Number of lights in use, the bare light included.
std::size_t lights_in_use(const ResponseProblem& problem) {
  return ResponsePoints(problem, 0.0).lights().size();
}

std::vector<ChannelResponse> fit_channels(const ResponseProblem& problem, double stray_share) {
  const ResponsePoints points(problem, stray_share);
  std::vector<ChannelResponse> channels;
  for (int c = 0; c < problem.channels; ++c) {
    channels.push_back(fit_channel(points.of_channel(c), points.bare_log_light(c)));
  }
  return channels;
}

/// Visual density that a light is read as.
double read_density(const ShownLight& light, const std::vector<ChannelResponse>& channels,
                    double stray_share, double callier) {
  PerChannel<double> through{};
  for (std::size_t c = 0; c < channels.size(); ++c) {
    const double total =
        channels[c].curve.light_of(light.step.code[c]) * std::pow(10.0, channels[c].full_log_light);
    through[c] = total - stray_share * mean_of(light.stray_field[c]);
  }
  return diffuse_density(
      density_from_transmittance(visual_from_channels(through, static_cast<int>(channels.size()))),
      callier);
}

/// Leaves wild lights out of the problem, one after another.
void leave_out_wild(ResponseProblem& problem, CalibratedStray& stray) {
  const auto least_left =
      static_cast<std::size_t>(std::ceil(kept_part * static_cast<double>(lights_in_use(problem))));
  while (lights_in_use(problem) > std::max(fewest_lights, least_left)) {
    const int wild = wildest_light(problem, stray.share);
    if (wild < 0) {
      return;
    }
    CalibrationStep& step = problem.lights[static_cast<std::size_t>(wild)].step;
    step.left_out = fact_of(Unknown::step_off_response);
    const std::vector<ChannelResponse> without = fit_channels(problem, stray.share);
    const double away = read_density(problem.lights[static_cast<std::size_t>(wild)], without,
                                     stray.share, problem.callier) -
                        step.reference_density;
    if (std::abs(away) < wild_density) {
      step.left_out.reset();
      return;
    }
    step.outlier = true;
    stray = weighed_stray(problem);
  }
}

bool codes_fall(const ResponseProblem& problem) {
  const ResponsePoints points(problem, problem.stray.share);
  for (int c = 0; c < problem.channels; ++c) {
    const std::vector<CurvePoint> channel = points.of_channel(c);
    int rises = 0;
    int falls = 0;
    for (std::size_t i = 1; i < channel.size(); ++i) {
      const double least = 2.0 * std::hypot(channel[i].doubt, channel[i - 1].doubt);
      const double step = channel[i].y - channel[i - 1].y;
      rises += step > least ? 1 : 0;
      falls += step < -least ? 1 : 0;
    }
    if (falls < 2 || 3 * rises > falls) {
      return false;
    }
  }
  return true;
}

void judge_steps(ScannerCalibration& calibration, const ResponseProblem& problem,
                 const std::vector<ChannelResponse>& channels) {
  double squares = 0.0;
  int used = 0;
  for (const ShownLight& light : problem.lights) {
    CalibrationStep step = light.step;
    step.used = !step.left_out;
    step.density = read_density(light, channels, calibration.stray.share, problem.callier);
    const CalibratedDoubt doubt = calibration.doubt_at(step.reference_density);
    step.u95 = 1.96 * std::hypot(doubt.fit, noise_density(light, channels, calibration));
    if (step.used && step.density <= calibration.density_limit) {
      squares += (step.density - step.reference_density) * (step.density - step.reference_density);
      ++used;
    }
    calibration.steps.push_back(step);
  }
  calibration.residual_rms = used > 0 ? std::sqrt(squares / used) : 0.0;
}

}  // namespace

ResponseOutcome fit_response(const ResponseProblem& given) {
  ResponseOutcome outcome;
  ResponseProblem problem = given;
  if (lights_in_use(problem) < fewest_lights) {
    outcome.failure = Refusal::too_few_lights;
    return outcome;
  }
  if (!codes_fall(problem)) {
    outcome.failure = Refusal::codes_not_falling;
    return outcome;
  }
  CalibratedStray stray = weighed_stray(problem);
  if (problem.may_leave_out) {
    leave_out_wild(problem, stray);
  }
  const std::vector<ChannelResponse> channels = fit_channels(problem, stray.share);
  ScannerCalibration& calibration = outcome.calibration;
  calibration.channels = problem.channels;
  calibration.curves.channels = problem.channels;
  for (std::size_t c = 0; c < channels.size(); ++c) {
    if (channels[c].curve.code.empty()) {
      outcome.failure = Refusal::codes_not_of_light;
      return outcome;
    }
    calibration.curves.of_channel[c] = channels[c].curve;
  }
  calibration.stray = stray;
  calibration.callier = problem.callier;
  add_doubt(calibration, problem, channels);
  judge_steps(calibration, problem, channels);
  return outcome;
}

}  // namespace fogline
