#include "page/calibration_plot.h"

#include "density/callier.h"
#include "page/draw/plot.h"
#include "words/figure_words.h"

#include <fogline/base/quantity.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace fogline {

namespace {

constexpr std::array<std::string_view, 3> channel_classes{"c-red", "c-green", "c-blue"};

/// Decimals of a place in a stretched path: a hundredth of a percent.
constexpr int path_decimals = 2;

Markup density_axis(const PlotFrame& frame) {
  constexpr double long_scale = 2.0;
  constexpr double numbers_down = 16.0;
  const bool is_long = frame.across.to > long_scale;
  return axis_x({frame.across, is_long ? 0.5 : 0.25, is_long ? 1 : 2},
                {"grid", {percent(0.0), percent(100.0)}, percent(100.0), numbers_down});
}

Element mark(const CalibrationStep& step, double x, double y, std::string_view channel) {
  constexpr double radius = 3.0;
  constexpr double cross_down = 5.0;
  if (step.outlier || !step.used) {
    return label("out " + std::string(channel),
                 {percent(x), percent(y), Anchor::middle, 0.0, cross_down}, "×");
  }
  return dot("dot " + std::string(channel), radius, percent(x), percent(y));
}

double shown_end(const ScannerCalibration& calibration) {
  double end = 0.5;
  for (const CalibrationStep& step : calibration.steps) {
    end = std::max(end, step.reference_density);
  }
  return 0.25 * std::ceil(end / 0.25 + 0.2);
}

/// Density that a channel's curve stands for, where bare light is the calibration's own (or the
/// brightest step's).
PathData curve_data(const ScannerCalibration& calibration, std::size_t channel,
                    const PlotFrame& frame) {
  const CodeCurve& curve = calibration.curves.of_channel[channel];
  const CalibrationStep& first = calibration.steps.front();
  const auto directed = [&](double density) {
    return directed_density(density, calibration.callier);
  };
  const double zero = calibration.bare_code ? curve.light_of((*calibration.bare_code)[channel])
                                            : curve.light_of(first.code[channel]) *
                                                  std::pow(10.0, directed(first.reference_density));
  const double share = calibration.stray.share;
  PathData data(path_decimals);
  for (double density = 0.0; density <= calibration.shown_to_density; density += 0.02) {
    const double field = mean_of(calibration.doubt_at(density).field);
    const double light =
        (std::pow(10.0, -directed(density)) + share * field) / (1.0 + share * field) * zero;
    data.add(frame.x(density), frame.y(-std::log10(curve.code_of(light))));
  }
  return data;
}

}  // namespace

Element response_plot(const ScannerCalibration& calibration) {
  PlotFrame frame{{0.0, shown_end(calibration)}, {0.0, 0.5}};
  for (const CalibrationStep& step : calibration.steps) {
    for (std::size_t c = 0; c < static_cast<std::size_t>(calibration.channels); ++c) {
      if (step.code[c] > 0.0) {
        frame.up.to = std::max(frame.up.to, -std::log10(step.code[c]));
      }
    }
  }
  constexpr double step_of_codes = 0.5;
  frame.up.to = step_of_codes * std::ceil(frame.up.to / step_of_codes);
  Markup paths;
  Markup dots;
  for (std::size_t c = 0; c < static_cast<std::size_t>(calibration.channels); ++c) {
    const std::string channel(calibration.channels == 1 ? "c-grey" : channel_classes[c]);
    paths.add(path("response " + channel, curve_data(calibration, c, frame)));
    for (const CalibrationStep& step : calibration.steps) {
      if (step.code[c] > 0.0) {
        dots.add(mark(step, frame.x(step.reference_density), frame.y(-std::log10(step.code[c])),
                      channel));
      }
    }
  }
  Markup drawing = density_axis(frame);
  drawing.add(axis_y({frame.up, step_of_codes, 1})).add(stretched(paths)).add(dots);
  return plot_figure(figure_names.response, drawing, response_caption(calibration));
}

Element residual_plot(const ScannerCalibration& calibration) {
  constexpr double round_difference = 0.05;
  PlotFrame frame{{0.0, shown_end(calibration)}, {-round_difference, round_difference}};
  for (const CalibrationStep& step : calibration.steps) {
    if (step.used && step.reference_density <= calibration.density_limit) {
      frame.up.to = std::max(frame.up.to, std::abs(step.density - step.reference_density));
    }
  }
  frame.up.to = round_difference * std::ceil(frame.up.to / round_difference - 1e-9);
  frame.up.from = -frame.up.to;
  BandData doubt;
  for (const CalibratedDoubt& at : calibration.doubt) {
    const double u95 = coverage_factor_95 * std::hypot(at.fit, at.stray);
    doubt.add(frame.x(at.density), frame.held_y(u95), frame.held_y(-u95));
  }
  const Place zero = percent(frame.y(0.0));
  const Place limit = percent(frame.x(calibration.density_limit));
  const Stretch whole{percent(0.0), percent(100.0)};
  Markup drawing = density_axis(frame);
  drawing.add(axis_y({frame.up, 0.5 * frame.up.to, 3}));
  drawing.add(stretched(Markup().add(doubt.element())));
  drawing.add(line("zero", whole, {zero, zero})).add(line("limit", {limit, limit}, whole));
  drawing.add(label("limit-word", {limit, points(0.0), Anchor::end, -5.0, 13.0}, "limit"));
  for (const CalibrationStep& step : calibration.steps) {
    if (std::isfinite(step.density)) {
      drawing.add(mark(step, frame.x(step.reference_density),
                       frame.held_y(step.density - step.reference_density), "c-grey"));
    }
  }
  return plot_figure(figure_names.residuals, drawing, residual_caption());
}

}  // namespace fogline
