#pragma once

#include "page/draw/shapes.h"

#include <string_view>
#include <vector>

namespace fogline {

// Lines are drawn in an inner picture that stretches to any width; points and letters are placed by
// percentages, so that they keep their size.

/// A rectangle of numbers: x rises to the right, y upwards.
struct PlotFrame {
  Scale across;
  Scale up;

  /// Places in the drawing, 0 to 100 from its upper left corner.
  [[nodiscard]] double x(double number) const { return across.share(number); }
  [[nodiscard]] double y(double number) const { return 100.0 - up.share(number); }
  /// The same, held inside the frame.
  [[nodiscard]] double held_y(double number) const { return 100.0 - up.held_share(number); }
};

/// Marks of an axis: every multiple of `step` from `from` to `to`, with its number.
struct AxisMarks {
  Scale scale;
  double step = 1.0;
  int decimals = 1;
  /// A plus before what is above nothing.
  bool is_signed = false;
};

/// An axis along x: at each mark a line of `css_class` over `lines`, its number at `height`, `down`
/// points below it.
struct AxisX {
  std::string_view css_class = "grid";
  Stretch lines;
  Place numbers;
  double numbers_down = 0.0;
};
Markup axis_x(const AxisMarks& marks, const AxisX& axis);
/// The numbers of such an axis without its lines.
Markup axis_x_numbers(const AxisMarks& marks, const AxisX& axis);

/// Lines across the whole plot with their numbers at the left.
Markup axis_y(const AxisMarks& marks);

/// A band between two curves: `upper` forth, `lower` back. Both over the same places.
class BandData {
 public:
  void add(double x, double upper_y, double lower_y);
  [[nodiscard]] Element element() const;

 private:
  struct Edges {
    double x = 0.0;
    double upper_y = 0.0;
    double lower_y = 0.0;
  };
  std::vector<Edges> edges_;
};

/// Paths of 0 to 100 in both directions, stretched to the plot.
Element stretched(const Markup& paths);

/// The whole: what a screen reader says, the drawing, the sentence below; `css_class` beside
/// "plot".
Element plot_figure(std::string_view spoken, const Markup& drawing, std::string_view caption,
                    std::string_view css_class = "");

}  // namespace fogline
