#include "density/response_channel.h"

#include "density/callier.h"

#include <fogline/base/quantity.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace fogline {

namespace {

/// Points of the curve in log light: so close that straight lines between them miss a bent response
/// by less than 0.0002 in density.
constexpr double curve_step = 0.025;
/// The curve is followed so far above the bare light (a lamp brighter elsewhere) before it goes on
/// straight.
constexpr double above_bare = 0.1;
/// Codes that fall by less than this part of what light falls by tell nothing any more.
constexpr double least_slope = 0.02;
/// Slopes believed of single steps, for weighing the doubt of their densities.
constexpr double smallest_step_slope = 0.05;
constexpr double greatest_step_slope = 3.0;

/// Slope of log code over log light about each point, from its neighbours.
std::vector<double> step_slopes(const std::vector<CurvePoint>& points) {
  std::vector<double> slopes;
  const std::size_t last = points.size() - 1;
  for (std::size_t i = 0; i <= last; ++i) {
    const CurvePoint& before = points[i == 0 ? 0 : i - 1];
    const CurvePoint& after = points[std::min(i + 1, last)];
    const double run = after.x - before.x;
    const double slope = run != 0.0 ? (after.y - before.y) / run : 1.0;
    slopes.push_back(std::clamp(slope, smallest_step_slope, greatest_step_slope));
  }
  return slopes;
}

}  // namespace

ResponsePoints::ResponsePoints(const ResponseProblem& problem, double stray_share)
    : problem_(problem), stray_share_(stray_share) {
  if (problem.bare) {
    lights_.push_back(-1);
  }
  for (std::size_t i = 0; i < problem.lights.size(); ++i) {
    if (!problem.lights[i].step.left_out) {
      lights_.push_back(static_cast<int>(i));
    }
  }
}

std::vector<CurvePoint> ResponsePoints::of_channel(int channel) const {
  const auto c = static_cast<std::size_t>(channel);
  std::vector<CurvePoint> points;
  std::vector<double> density_doubts;
  for (const int index : lights_) {
    const ShownLight& light =
        index < 0 ? *problem_.bare : problem_.lights[static_cast<std::size_t>(index)];
    const double density = light.step.reference_density;
    const double through = transmittance_from_density(directed_density(density, problem_.callier));
    const double total = through + stray_share_ * mean_of(light.stray_field[c]);
    points.push_back({std::log10(total), std::log10(light.step.code[c]),
                      light.code_doubt[c] / (light.step.code[c] * std::numbers::ln10)});
    density_doubts.push_back(light.density_doubt * directed_slope(density, problem_.callier) *
                             through / total);
  }
  const std::vector<double> slopes = step_slopes(points);
  for (std::size_t i = 0; i < points.size(); ++i) {
    constexpr double least_doubt = 1e-4;
    points[i].doubt =
        std::max(least_doubt, std::hypot(points[i].doubt, slopes[i] * density_doubts[i]));
  }
  return points;
}

double ResponsePoints::bare_log_light(int channel) const {
  const auto c = static_cast<std::size_t>(channel);
  const ShownLight& nearest = problem_.bare ? *problem_.bare : problem_.lights.front();
  return std::log10(1.0 + stray_share_ * mean_of(nearest.stray_field[c]));
}

ChannelResponse fit_channel(const std::vector<CurvePoint>& points, double bare_log_light) {
  double lowest = bare_log_light;
  for (const CurvePoint& point : points) {
    lowest = std::min(lowest, point.x);
  }
  std::vector<double> places;
  for (double x = bare_log_light + above_bare; x > lowest - curve_step; x -= curve_step) {
    places.push_back(x);
  }
  const SmoothCurve fit = fit_smooth_curve(points, places, bare_log_light);
  // How much the response bends is told by the same few lights, two of which a straight line takes:
  // their doubt is greater by about as much as Student's factor for so few is (JCGM 100 G.3).
  const double spare = std::max(1.0, static_cast<double>(points.size()) - 2.0);
  const double few_lights = 1.0 + 1.0 / spare;
  ChannelResponse response;
  std::vector<double> log_code;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (i > 0 && !(fit.y[i] < log_code.back() - least_slope * curve_step)) {
      break;
    }
    log_code.push_back(fit.y[i]);
    response.log_light.push_back(places[i]);
    const std::size_t next = std::min(i + 1, places.size() - 1);
    const std::size_t before = i == 0 ? 0 : i - 1;
    const double slope = (fit.y[next] - fit.y[before]) / (places[next] - places[before]);
    response.doubt.push_back(few_lights * fit.doubt_from_reference[i] /
                             std::max(least_slope, slope));
  }
  if (response.log_light.size() < 2) {
    return {};
  }
  response.lowest_log_light = response.log_light.back();
  // From the brightest place straight on to the full code.
  const double top_slope = (log_code[0] - log_code[1]) / curve_step;
  const double beyond = std::max(curve_step, -log_code[0] / top_slope);
  response.full_log_light = response.log_light.front() + beyond;
  response.curve.code.push_back(std::pow(10.0, log_code[0] + beyond * top_slope));
  response.curve.light.push_back(1.0);
  for (std::size_t i = 0; i < log_code.size(); ++i) {
    response.curve.code.push_back(std::pow(10.0, log_code[i]));
    response.curve.light.push_back(std::pow(10.0, response.log_light[i] - response.full_log_light));
  }
  std::reverse(response.curve.code.begin(), response.curve.code.end());
  std::reverse(response.curve.light.begin(), response.curve.light.end());
  return response;
}

}  // namespace fogline
