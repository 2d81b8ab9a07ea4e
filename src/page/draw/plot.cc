#include "page/draw/plot.h"

#include "words/number_text.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace fogline {
namespace {

/// Of a multiple: so much rounding doesn't leave the last mark of an axis out.
constexpr double rounding = 1e-6;

double first_mark(const AxisMarks& marks) {
  return std::ceil(marks.scale.from / marks.step - rounding) * marks.step;
}

std::string number_at(const AxisMarks& marks, double number) {
  std::string text = marks.is_signed && number > rounding ? "+" : "";
  return text.append(text_from_number(number, marks.decimals));
}

Element number_of_x(const AxisMarks& marks, const AxisX& axis, double number) {
  return label(
      "",
      {percent(marks.scale.share(number)), axis.numbers, Anchor::middle, 0.0, axis.numbers_down},
      number_at(marks, number));
}

}  // namespace

Markup axis_x(const AxisMarks& marks, const AxisX& axis) {
  Markup html;
  for (double number = first_mark(marks); number < marks.scale.to + rounding;
       number += marks.step) {
    const Place place = percent(marks.scale.share(number));
    html.add(line(axis.css_class, {place, place}, axis.lines));
    html.add(number_of_x(marks, axis, number));
  }
  return html;
}

Markup axis_x_numbers(const AxisMarks& marks, const AxisX& axis) {
  Markup html;
  for (double number = first_mark(marks); number < marks.scale.to + rounding;
       number += marks.step) {
    html.add(number_of_x(marks, axis, number));
  }
  return html;
}

Markup axis_y(const AxisMarks& marks) {
  Markup html;
  for (double number = first_mark(marks); number < marks.scale.to + rounding;
       number += marks.step) {
    const Place place = percent(100.0 - marks.scale.share(number));
    html.add(line("grid", {percent(0.0), percent(100.0)}, {place, place}));
    html.add(label("", {percent(0.0), place, Anchor::end, -6.0, 4.0}, number_at(marks, number)));
  }
  return html;
}

void BandData::add(double x, double upper_y, double lower_y) {
  edges_.push_back({x, upper_y, lower_y});
}

Element BandData::element() const {
  PathData data(2);
  for (const Edges& edges : edges_) {
    data.add(edges.x, edges.upper_y);
  }
  std::for_each(edges_.rbegin(), edges_.rend(),
                [&](const Edges& edges) { data.add(edges.x, edges.lower_y); });
  return path("band", data.close());
}

Element stretched(const Markup& paths) {
  Element element("svg");
  element.set("width", "100%").set("height", "100%").set("viewBox", "0 0 100 100");
  return element.set("preserveAspectRatio", "none").add(paths);
}

Element plot_figure(std::string_view spoken, const Markup& drawing, std::string_view caption,
                    std::string_view css_class) {
  std::string classes = "plot";
  classes.append(css_class.empty() ? "" : " ").append(css_class);
  Element svg("svg");
  svg.set("role", "img").set("aria-label", spoken).add(drawing);
  Element figure("figure");
  return figure.set("class", classes).add(svg).add(Element("figcaption").text(caption));
}

}  // namespace fogline
