#include "page/draw/shapes.h"

#include "words/number_text.h"

#include <algorithm>
#include <array>

namespace fogline {
namespace {

constexpr std::array<std::string_view, 3> anchor_names{"start", "middle", "end"};
/// Of a share: a hundredth of a percent is less than a pixel on any screen.
constexpr int share_decimals = 2;

Place length_of(const Stretch& stretch) {
  return {std::max(0.0, stretch.to.value - stretch.from.value), stretch.from.is_share};
}

std::string shift_text(double shift) {
  return machine_number(shift, 0);
}

}  // namespace

std::string Place::text() const {
  return is_share ? machine_number(value, share_decimals) + "%" : machine_number(value, 0);
}

double Scale::held_share(double number) const {
  return std::clamp(share(number), 0.0, 100.0);
}

Element line(std::string_view css_class, const Stretch& x, const Stretch& y) {
  Element element("line");
  element.set("class", css_class).set("x1", x.from.text()).set("x2", x.to.text());
  element.set("y1", y.from.text()).set("y2", y.to.text());
  return element;
}

Element band(std::string_view css_class, const Stretch& x, const Stretch& y) {
  Element element("rect");
  element.set("class", css_class).set("x", x.from.text()).set("width", length_of(x).text());
  element.set("y", y.from.text()).set("height", length_of(y).text());
  return element;
}

Element dot(std::string_view css_class, double radius, Place x, Place y) {
  Element element("circle");
  constexpr int decimals = 1;
  element.set("class", css_class).set("r", radius, decimals);
  element.set("cx", x.text()).set("cy", y.text());
  return element;
}

Element label(std::string_view css_class, const LabelPlace& place, std::string_view words) {
  Element element("text");
  element.set("class", css_class).set("x", place.x.text()).set("y", place.y.text());
  if (place.right != 0.0) {
    element.set("dx", shift_text(place.right));
  }
  if (place.down != 0.0) {
    element.set("dy", shift_text(place.down));
  }
  element.set("text-anchor", anchor_names.at(static_cast<std::size_t>(place.anchor)));
  return element.text(words);
}

PathData& PathData::step(char command, double x, double y) {
  data_ += command;
  data_ += machine_number(x, decimals_) + " " + machine_number(y, decimals_);
  return *this;
}

PathData& PathData::move_to(double x, double y) {
  return step('M', x, y);
}

PathData& PathData::line_to(double x, double y) {
  return step('L', x, y);
}

PathData& PathData::add(double x, double y) {
  return step(data_.empty() ? 'M' : 'L', x, y);
}

PathData& PathData::close() {
  data_ += 'Z';
  return *this;
}

PathData& PathData::box(const BoxPx& box) {
  move_to(box.x, box.y);
  data_.append("h").append(machine_number(box.width, decimals_));
  data_.append("v").append(machine_number(box.height, decimals_));
  data_.append("h").append(machine_number(-box.width, decimals_));
  return close();
}

Element path(std::string_view css_class, const PathData& data) {
  Element element("path");
  element.set("class", css_class).set("d", data.text());
  return element;
}

Markup cased_path(std::string_view css_class, const PathData& data) {
  return Markup().add(path("casing", data)).add(path(css_class, data));
}

std::string view_box(const BoxPx& view, int decimals) {
  std::string text;
  for (const double number : {view.x, view.y, view.width, view.height}) {
    text += text.empty() ? "" : " ";
    text += machine_number(number, decimals);
  }
  return text;
}

Element window_on(std::string_view href, const BoxPx& view, int decimals) {
  Element element("svg");
  element.set("viewBox", view_box(view, decimals)).add(Element("use").set("href", href));
  return element;
}

}  // namespace fogline
