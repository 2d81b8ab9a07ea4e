#include "page/calibration_plot.h"

#include "density/callier.h"
#include "page/draw/plot.h"
#include "words/number_text.h"

#include <fogline/base/quantity.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace fogline {

namespace {

constexpr std::array<std::string_view, 3> channel_classes{"c-red", "c-green", "c-blue"};

std::string x_axis(const PlotFrame& frame) {
  std::string html;
  const double step = frame.x_to > 2.0 ? 0.5 : 0.25;
  for (double x = 0.0; x < frame.x_to + 1e-6; x += step) {
    html += plot_line("grid", frame.x(x), frame.x(x), 0.0, 100.0);
    html += "<text x=\"" + plot_percent(frame.x(x)) +
            "\" y=\"100%\" dy=\"16\" text-anchor=\"middle\">" +
            text_from_number(x, step < 0.5 ? 2 : 1) + "</text>\n";
  }
  return html;
}

std::string mark(const CalibrationStep& step, double x, double y, std::string_view channel) {
  const std::string at = plot_percent(x) + "\" y=\"" + plot_percent(y);
  if (step.outlier || !step.used) {
    return "<text class=\"out " + std::string(channel) + "\" x=\"" + at +
           "\" dy=\"5\" text-anchor=\"middle\">×</text>\n";
  }
  return "<circle class=\"dot " + std::string(channel) + "\" r=\"3\" cx=\"" + plot_percent(x) +
         "\" cy=\"" + plot_percent(y) + "\"/>\n";
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
std::string curve_data(const ScannerCalibration& calibration, std::size_t channel,
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
  std::string data;
  for (double density = 0.0; density <= calibration.shown_to_density; density += 0.02) {
    const double field = mean_of(calibration.doubt_at(density).field);
    const double light =
        (std::pow(10.0, -directed(density)) + share * field) / (1.0 + share * field) * zero;
    add_plot_point(data, frame.x(density), frame.y(-std::log10(curve.code_of(light))));
  }
  return data;
}

}  // namespace

std::string response_plot(const ScannerCalibration& calibration) {
  PlotFrame frame{0.0, shown_end(calibration), 0.0, 0.5};
  for (const CalibrationStep& step : calibration.steps) {
    for (std::size_t c = 0; c < static_cast<std::size_t>(calibration.channels); ++c) {
      if (step.code[c] > 0.0) {
        frame.y_to = std::max(frame.y_to, -std::log10(step.code[c]));
      }
    }
  }
  frame.y_to = 0.5 * std::ceil(frame.y_to / 0.5);
  std::string drawing = x_axis(frame) + plot_y_axis(frame, 0.5, 1);
  std::string paths;
  std::string points;
  for (std::size_t c = 0; c < static_cast<std::size_t>(calibration.channels); ++c) {
    const std::string_view channel = calibration.channels == 1 ? "c-grey" : channel_classes[c];
    paths += plot_path("response " + std::string(channel), curve_data(calibration, c, frame));
    for (const CalibrationStep& step : calibration.steps) {
      if (step.code[c] > 0.0) {
        points += mark(step, frame.x(step.reference_density), frame.y(-std::log10(step.code[c])),
                       channel);
      }
    }
  }
  return plot_figure(
      "Response: code over density", drawing + plot_stretched(paths) + points,
      "Code below full scale (as a power of ten) over density" +
          std::string(calibration.channels == 1
                          ? ""
                          : ": red, green and blue channel, solid, dashed and dotted") +
          ". A cross is a step that was left out. A straight line at 45° would be a "
          "scanner whose codes are light.");
}

std::string residual_plot(const ScannerCalibration& calibration) {
  PlotFrame frame{0.0, shown_end(calibration), -0.05, 0.05};
  for (const CalibrationStep& step : calibration.steps) {
    if (step.used && step.reference_density <= calibration.density_limit) {
      frame.y_to = std::max(frame.y_to, std::abs(step.density - step.reference_density));
    }
  }
  frame.y_to = 0.05 * std::ceil(frame.y_to / 0.05 - 1e-9);
  frame.y_from = -frame.y_to;
  const auto held = [&](double value) { return std::clamp(value, frame.y_from, frame.y_to); };
  std::string upper;
  std::string lower;
  for (const CalibratedDoubt& doubt : calibration.doubt) {
    const double u95 = coverage_factor_95 * std::hypot(doubt.fit, doubt.stray);
    add_plot_point(upper, frame.x(doubt.density), frame.y(held(u95)));
    std::string back = "L";
    back +=
        machine_number(frame.x(doubt.density), 2) + " " + machine_number(frame.y(held(-u95)), 2);
    lower.insert(0, back);
  }
  std::string drawing = x_axis(frame) + plot_y_axis(frame, 0.5 * frame.y_to, 3);
  drawing += plot_stretched(plot_path("band", upper + lower + "Z"));
  drawing += plot_line("zero", 0.0, 100.0, frame.y(0.0), frame.y(0.0));
  drawing += plot_line("limit", frame.x(calibration.density_limit),
                       frame.x(calibration.density_limit), 0.0, 100.0);
  drawing += "<text class=\"limit-word\" x=\"" + plot_percent(frame.x(calibration.density_limit)) +
             "\" y=\"0\" dx=\"-5\" dy=\"13\" text-anchor=\"end\">limit</text>\n";
  for (const CalibrationStep& step : calibration.steps) {
    if (std::isfinite(step.density)) {
      drawing += mark(step, frame.x(step.reference_density),
                      frame.y(held(step.density - step.reference_density)), "c-grey");
    }
  }
  return plot_figure(
      "Differences of the steps from the reference", drawing,
      "Density read less density of the reference, over density. The band covers the "
      "truth 95 times in 100, the certificate's own doubt not counted; right of the limit "
      "densities are told no better than within 0.1.");
}

}  // namespace fogline
