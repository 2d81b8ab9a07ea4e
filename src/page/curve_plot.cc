#include "page/curve_plot.h"

#include "page/draw/plot.h"
#include "sensitometry/curve_constructions.h"
#include "sensitometry/developed_to.h"
#include "words/curve_words.h"
#include "words/figure_words.h"
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
  frame.across.from = down_to(std::max(first, curve.mean.begin_log_h), stop_log_h);
  frame.across.to = up_to(std::min(last, curve.mean.end_log_h()), stop_log_h);
  frame.up = {0.0, up_to(top + 0.1, density_step)};
  return frame;
}

bool shows(const PlotFrame& frame, double log_h) {
  return log_h >= frame.across.from && log_h <= frame.across.to;
}

/// Log H below, zones above it.
Markup log_h_axis(const PlotFrame& frame, const ZonePlacement& placement) {
  constexpr double labelled = 0.6;
  constexpr double numbers_down = 30.0;
  constexpr double zones_down = 14.0;
  Markup markup =
      axis_x_numbers({frame.across, labelled, 1}, {"", {}, percent(100.0), numbers_down});
  for (const ZoneDensity& zone : placement.zones) {
    if (shows(frame, zone.log_h)) {
      const Place x = percent(frame.x(zone.log_h));
      markup.add(line("grid", {x, x}, {percent(0.0), percent(100.0)}));
      markup.add(label("zone", {x, percent(100.0), Anchor::middle, 0.0, zones_down},
                       zone_numeral(zone.zone)));
    }
  }
  return markup;
}

/// Decimals of a place in a stretched path: a hundredth of a percent.
constexpr int path_decimals = 2;

PathData data_of(const CurveTable& table, const PlotFrame& frame) {
  PathData data(path_decimals);
  constexpr double stride = 0.02;
  for (double x = frame.across.from; x <= frame.across.to + 1e-9; x += stride) {
    const double density = table.density_at(x);
    if (density > frame.up.to) {
      break;
    }
    data.add(frame.x(x), frame.y(density));
  }
  return data;
}

Element band_of(const CharacteristicCurve& curve, const PlotFrame& frame) {
  BandData band;
  for (std::size_t i = 0; i < curve.mean.net_density.size(); i += 2) {
    const double x = curve.mean.begin_log_h + curve.mean.step_log_h * static_cast<double>(i);
    if (shows(frame, x)) {
      const double u95 = coverage_factor_95 * curve.doubt[i];
      band.add(frame.x(x), frame.held_y(curve.mean.net_density[i] + u95),
               frame.held_y(curve.mean.net_density[i] - u95));
    }
  }
  return band.element();
}

Markup arc(const PlotFrame& frame, double centre, double radius) {
  PathData data(path_decimals);
  constexpr double steepest = 1.05;  // radians: index 1.7
  constexpr double stride = 0.05;
  for (double angle = 0.0; angle < steepest; angle += stride) {
    const double x = centre + radius * std::cos(angle);
    const double y = radius * std::sin(angle);
    if (shows(frame, x) && y <= frame.up.to) {
      data.add(frame.x(x), frame.y(y));
    }
  }
  return data.empty() ? Markup() : Markup().add(path("arc", data));
}

/// The arcs, and the line through their centre that is the contrast index.
Markup arcs_of(const Sensitometry& read, const PlotFrame& frame) {
  const auto arcs = two_arcs(read.curve.mean);
  if (!arcs || !read.readings.contrast_index) {
    return {};
  }
  const double first = std::max(arcs->centre_log_h, frame.across.from);
  const double last = std::min(arcs->outer_log_h, frame.across.to);
  PathData chord(path_decimals);
  for (const double x : {first, last}) {
    chord.add(frame.x(x), frame.held_y(arcs->contrast_index * (x - arcs->centre_log_h)));
  }
  return Markup()
      .add(arc(frame, arcs->centre_log_h, inner_arc))
      .add(arc(frame, arcs->centre_log_h, outer_arc))
      .add(path("chord", chord));
}

Markup arcs_word(const Sensitometry& read, const PlotFrame& frame) {
  const CurveReading& index = read.readings.contrast_index;
  if (!two_arcs(read.curve.mean) || !index) {
    return {};
  }
  return Markup().add(label("own", {percent(100.0), percent(frame.y(0.0)), Anchor::end, -4.0, -8.0},
                            contrast_index_words(*index)));
}

/// From the speed point over 1.30 and up 0.80.
Markup triangle_of(const Sensitometry& read, const PlotFrame& frame) {
  const double begin = read.curve.mean.log_h_at(speed_point_density);
  const double end = begin + iso_triangle_log_h;
  if (!std::isfinite(begin) || end > frame.across.to || begin < frame.across.from) {
    return {};
  }
  PathData data(path_decimals);
  data.add(frame.x(begin), frame.y(speed_point_density));
  data.add(frame.x(end), frame.y(speed_point_density));
  data.add(frame.x(end), frame.held_y(speed_point_density + iso_triangle_gain));
  return Markup().add(path("triangle", data));
}

Markup steps_of(const CharacteristicCurve& curve, const PlotFrame& frame) {
  constexpr double radius = 2.5;
  constexpr double cross_down = 5.0;
  Markup markup;
  for (const ExposedStep& step : curve.steps) {
    if (!shows(frame, step.log_h)) {
      continue;
    }
    const Place x = percent(frame.x(step.log_h));
    const Place y = percent(frame.held_y(step.density - curve.base_fog));
    if (step.left_out) {
      markup.add(label("out", {x, y, Anchor::middle, 0.0, cross_down}, "×"));
      continue;
    }
    const double along = coverage_factor_95 * step.log_h_doubt;
    if (along > 0.0) {
      markup.add(line("bar",
                      {percent(frame.x(step.log_h - along)), percent(frame.x(step.log_h + along))},
                      {y, y}));
    }
    markup.add(dot("dot", radius, x, y));
  }
  return markup;
}

/// The curve of the same film developed to the aim, and its name.
struct WishedCurve {
  Markup path;
  Markup name;
};

WishedCurve wished_curve(const CharacteristicCurve& curve, const Aim& aim, const PlotFrame& frame) {
  WishedCurve drawn;
  if (const auto wished = developed_to(curve.mean, aim.contrast_index)) {
    constexpr double name_down = -5.0;
    const double end = std::min(frame.across.to, wished->log_h_at(frame.up.to));
    drawn.path.add(path("wished", data_of(*wished, frame)));
    drawn.name.add(label("aim-word",
                         {percent(frame.x(end)), percent(frame.held_y(wished->density_at(end))),
                          Anchor::end, 0.0, name_down},
                         "wished"));
  }
  return drawn;
}

}  // namespace

Element curve_figure(const Sensitometry& read, const Aim& aim) {
  const PlotFrame frame = frame_of(read.curve);
  const WishedCurve wished = wished_curve(read.curve, aim, frame);
  Markup paths;
  paths.add(band_of(read.curve, frame)).add(wished.path).add(triangle_of(read, frame));
  paths.add(arcs_of(read, frame)).add(path("response", data_of(read.curve.mean, frame)));
  Markup drawing = log_h_axis(frame, read.placement);
  drawing.add(axis_y({frame.up, density_step, 1})).add(stretched(paths));
  drawing.add(steps_of(read.curve, frame)).add(wished.name).add(arcs_word(read, frame));
  return plot_figure(figure_names.curve, drawing, curve_caption(read, aim, !wished.path.empty()),
                     "curve");
}

}  // namespace fogline
