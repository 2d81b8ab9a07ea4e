#include "page/curve_plot.h"

#include "page/draw/plot.h"
#include "sensitometry/curve_constructions.h"
#include "sensitometry/developed_to.h"
#include "words/curve_words.h"
#include "words/number_text.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

constexpr double density_step = 0.3;
/// Beyond the exposures, those left out too, the curve is drawn so far.
constexpr double drawn_beyond = 0.3;

double down_to(double value, double step) {
  return step * std::floor(value / step + 1e-9);
}

double up_to(double value, double step) {
  return step * std::ceil(value / step - 1e-9);
}

PlotFrame frame_of(const CharacteristicCurve& curve) {
  double top = 1.2;
  for (const ExposedStep& step : curve.steps) {
    top = std::max(top, step.density - curve.base_fog);
  }
  const double first = std::min(curve.begin_log_h, curve.steps.front().log_h) - drawn_beyond;
  const double last = std::max(curve.end_log_h, curve.steps.back().log_h) + drawn_beyond;
  PlotFrame frame;
  frame.x_from = down_to(std::max(first, curve.mean.begin_log_h), stop_log_h);
  frame.x_to = up_to(std::min(last, curve.mean.end_log_h()), stop_log_h);
  frame.y_from = 0.0;
  frame.y_to = up_to(top + 0.1, density_step);
  return frame;
}

double held(const PlotFrame& frame, double density) {
  return frame.y(std::clamp(density, frame.y_from, frame.y_to));
}

std::string text_at(std::string_view css_class, double x, double y, const std::string& attributes,
                    const std::string& words) {
  std::string html = "<text";
  html += css_class.empty() ? std::string() : " class=\"" + std::string(css_class) + "\"";
  return html + " x=\"" + plot_percent(x) + "\" y=\"" + plot_percent(y) + "\" " + attributes + ">" +
         words + "</text>\n";
}

/// Log H below, stops from the metered exposure or zones above it.
std::string x_axis(const PlotFrame& frame, const ZonePlacement& placement) {
  std::string html;
  constexpr double labelled = 0.6;
  for (double x = up_to(frame.x_from, labelled); x < frame.x_to + 1e-6; x += labelled) {
    html +=
        text_at("", frame.x(x), 100.0, "dy=\"30\" text-anchor=\"middle\"", text_from_number(x, 1));
  }
  for (const ZoneDensity& zone : placement.zones) {
    if (zone.log_h < frame.x_from || zone.log_h > frame.x_to) {
      continue;
    }
    html += plot_line("grid", frame.x(zone.log_h), frame.x(zone.log_h), 0.0, 100.0);
    html += text_at("zone", frame.x(zone.log_h), 100.0, "dy=\"14\" text-anchor=\"middle\"",
                    zone_numeral(zone.zone));
  }
  return html;
}

std::string data_of(const CurveTable& table, const PlotFrame& frame) {
  std::string data;
  constexpr double stride = 0.02;
  for (double x = frame.x_from; x <= frame.x_to + 1e-9; x += stride) {
    const double density = table.density_at(x);
    if (density > frame.y_to) {
      break;
    }
    add_plot_point(data, frame.x(x), frame.y(density));
  }
  return data;
}

std::string band_of(const CharacteristicCurve& curve, const PlotFrame& frame) {
  std::string upper;
  std::string lower;
  for (std::size_t i = 0; i < curve.mean.net_density.size(); i += 2) {
    const double x = curve.mean.begin_log_h + curve.mean.step_log_h * static_cast<double>(i);
    if (x < frame.x_from || x > frame.x_to) {
      continue;
    }
    const double u95 = coverage_factor_95 * curve.doubt[i];
    add_plot_point(upper, frame.x(x), held(frame, curve.mean.net_density[i] + u95));
    std::string back = "L";
    back += machine_number(frame.x(x), 2) + " " +
            machine_number(held(frame, curve.mean.net_density[i] - u95), 2);
    lower.insert(0, back);
  }
  return plot_path("band", upper + lower + "Z");
}

std::string arc(const PlotFrame& frame, double centre, double radius) {
  std::string data;
  constexpr double steepest = 1.05;  // radians: index 1.7
  constexpr double stride = 0.05;
  for (double angle = 0.0; angle < steepest; angle += stride) {
    const double x = centre + radius * std::cos(angle);
    const double y = radius * std::sin(angle);
    if (x >= frame.x_from && x <= frame.x_to && y <= frame.y_to) {
      add_plot_point(data, frame.x(x), frame.y(y));
    }
  }
  return data.empty() ? std::string() : plot_path("arc", data);
}

/// The arcs, and the line through their centre that is the contrast index.
std::string arcs_of(const Sensitometry& read, const PlotFrame& frame) {
  const auto arcs = two_arcs(read.curve.mean);
  if (!arcs || !read.readings.contrast_index) {
    return "";
  }
  const double last = std::min(arcs->outer_log_h, frame.x_to);
  std::string data;
  add_plot_point(
      data, frame.x(std::max(arcs->centre_log_h, frame.x_from)),
      held(frame, arcs->contrast_index * std::max(0.0, frame.x_from - arcs->centre_log_h)));
  add_plot_point(data, frame.x(last),
                 held(frame, arcs->contrast_index * (last - arcs->centre_log_h)));
  return arc(frame, arcs->centre_log_h, inner_arc) + arc(frame, arcs->centre_log_h, outer_arc) +
         plot_path("chord", data);
}

std::string arcs_word(const Sensitometry& read, const PlotFrame& frame) {
  const auto arcs = two_arcs(read.curve.mean);
  const CurveReading& index = read.readings.contrast_index;
  if (!arcs || !index) {
    return "";
  }
  return text_at("own", 100.0, frame.y(0.0), "dx=\"-4\" dy=\"-8\" text-anchor=\"end\"",
                 "contrast index " + sentence_from_density(*index, DensityUnits::density));
}

/// From the speed point over 1.30 and up 0.80.
std::string triangle_of(const Sensitometry& read, const PlotFrame& frame) {
  const double begin = read.curve.mean.log_h_at(speed_point_density);
  const double end = begin + iso_triangle_log_h;
  if (!std::isfinite(begin) || end > frame.x_to || begin < frame.x_from) {
    return "";
  }
  std::string data;
  add_plot_point(data, frame.x(begin), frame.y(speed_point_density));
  add_plot_point(data, frame.x(end), frame.y(speed_point_density));
  add_plot_point(data, frame.x(end), held(frame, speed_point_density + iso_triangle_gain));
  return plot_path("triangle", data);
}

std::string steps_of(const CharacteristicCurve& curve, const PlotFrame& frame) {
  std::string html;
  for (const ExposedStep& step : curve.steps) {
    const double net = step.density - curve.base_fog;
    const double x = frame.x(step.log_h);
    if (step.log_h < frame.x_from || step.log_h > frame.x_to) {
      continue;
    }
    if (step.left_out) {
      html += text_at("out", x, held(frame, net), "dy=\"5\" text-anchor=\"middle\"", "×");
      continue;
    }
    const double along = coverage_factor_95 * step.log_h_doubt;
    if (along > 0.0) {
      html += plot_line("bar", frame.x(step.log_h - along), frame.x(step.log_h + along),
                        held(frame, net), held(frame, net));
    }
    html += "<circle class=\"dot\" r=\"2.5\" cx=\"" + plot_percent(x) + "\" cy=\"" +
            plot_percent(held(frame, net)) + "\"/>\n";
  }
  return html;
}

}  // namespace

std::string curve_figure(const Sensitometry& read, const Aim& aim) {
  const PlotFrame frame = frame_of(read.curve);
  std::string paths = band_of(read.curve, frame);
  const auto wished = developed_to(read.curve.mean, aim.contrast_index);
  std::string words;
  if (wished) {
    paths += plot_path("wished", data_of(*wished, frame));
    const double end = std::min(frame.x_to, wished->log_h_at(frame.y_to));
    words += text_at("aim-word", frame.x(end), held(frame, wished->density_at(end)),
                     "dy=\"-5\" text-anchor=\"end\"", "wished");
  }
  paths += triangle_of(read, frame) + arcs_of(read, frame);
  paths += plot_path("response", data_of(read.curve.mean, frame));
  words += arcs_word(read, frame);
  const std::string counted = read.scale.absolute ? "log exposure in lux seconds"
                              : read.scale.metered_log_h
                                  ? "log exposure from the metered one"
                                  : "log exposure: minus the wedge's density";
  return plot_figure(
      "Characteristic curve",
      x_axis(frame, read.placement) + plot_y_axis(frame, density_step, 1) + plot_stretched(paths) +
          steps_of(read.curve, frame) + words,
      "Net density (above base plus fog) over " + counted +
          ", with zones above the numbers, a stop apart. Dots are the exposures, crosses those "
          "left "
          "out, the band holds the true curve 95 times in 100. The two arcs and the line through "
          "their centre tell the contrast index; the thin triangle is that of ISO 6 (up 0.80 over "
          "1.30)" +
          (wished
               ? "; dashed: the same film developed to " + text_from_number(aim.contrast_index, 2)
               : std::string()) +
          ".",
      "curve");
}

}  // namespace fogline
