#pragma once

#include "page/draw/element.h"

#include <fogline/base/raster.h>

#include <string>
#include <string_view>

namespace fogline {

// What every drawing of the page is made of. Places are shares of the drawing's side in percent, so
// that it fits any width, or points, so that letters and rows keep their size.

/// A place or a length along one side of a drawing.
struct Place {
  double value = 0.0;
  bool is_share = false;

  /// "12.50%" or "12": as an attribute holds it.
  [[nodiscard]] std::string text() const;
};

/// `share`: 0 to 100.
constexpr Place percent(double share) {
  return {share, true};
}
constexpr Place points(double value) {
  return {value, false};
}

/// From `from` to `to`, both of one kind.
struct Stretch {
  Place from;
  Place to;
};

/// Numbers laid along a side of a drawing: `from` at its begin (left, bottom), `to` at its end.
struct Scale {
  double from = 0.0;
  double to = 1.0;

  /// Percent of the way from `from` to `to`; beyond 0 or 100 for a number outside.
  [[nodiscard]] double share(double number) const { return 100.0 * (number - from) / (to - from); }
  /// The same, held at the ends.
  [[nodiscard]] double held_share(double number) const;
};

enum class Anchor { start, middle, end };

/// A straight line between two places.
Element line(std::string_view css_class, const Stretch& x, const Stretch& y);
/// A filled stretch, such as a doubt or an aim. What ends before it begins is drawn with no width.
Element band(std::string_view css_class, const Stretch& x, const Stretch& y);
/// A dot of `radius` points.
Element dot(std::string_view css_class, double radius, Place x, Place y);

/// Where letters stand: their anchor at a place, shifted by points.
struct LabelPlace {
  Place x;
  Place y;
  Anchor anchor = Anchor::middle;
  double right = 0.0;
  double down = 0.0;
};
Element label(std::string_view css_class, const LabelPlace& place, std::string_view words);

/// The data of a path.
class PathData {
 public:
  explicit PathData(int decimals) : decimals_(decimals) {}

  PathData& move_to(double x, double y);
  PathData& line_to(double x, double y);
  /// A line to a place; where nothing is drawn yet, begins there.
  PathData& add(double x, double y);
  PathData& close();
  /// A closed rectangle.
  PathData& box(const BoxPx& box);

  [[nodiscard]] bool empty() const { return data_.empty(); }
  [[nodiscard]] const std::string& text() const { return data_; }

 private:
  PathData& step(char command, double x, double y);

  int decimals_;
  std::string data_;
};

Element path(std::string_view css_class, const PathData& data);
/// A line over a picture, with a white one below it, to show on dark film too.
Markup cased_path(std::string_view css_class, const PathData& data);

/// A part of something drawn already: `href` is its "#id", `view` the part in its own units, with
/// that many decimals.
Element window_on(std::string_view href, const BoxPx& view, int decimals);

/// "x y width height", as viewBox holds it.
std::string view_box(const BoxPx& view, int decimals);

}  // namespace fogline
