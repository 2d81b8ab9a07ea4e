#pragma once

#include <string>
#include <string_view>

namespace fogline {

// Lines are drawn in an inner picture that stretches to any width; points and letters are placed by
// percentages, so that they keep their size.

/// A rectangle of numbers: x rises to the right, y upwards.
struct PlotFrame {
  double x_from = 0.0;
  double x_to = 1.0;
  double y_from = 0.0;
  double y_to = 1.0;

  /// Places in the drawing, 0 to 100 from its upper left corner.
  [[nodiscard]] double x(double value) const { return 100.0 * (value - x_from) / (x_to - x_from); }
  [[nodiscard]] double y(double value) const {
    return 100.0 - 100.0 * (value - y_from) / (y_to - y_from);
  }
};

std::string plot_percent(double place);
/// A straight line between places.
std::string plot_line(std::string_view css_class, double x1, double x2, double y1, double y2);
/// Lines across with their numbers at the left.
std::string plot_y_axis(const PlotFrame& frame, double step, int decimals);

/// Adds a place to the data of a path.
void add_plot_point(std::string& data, double x, double y);
/// A path, to be laid into `plot_stretched`.
std::string plot_path(std::string_view css_class, const std::string& data);
std::string plot_stretched(const std::string& paths);

/// The whole: what a screen reader says, the drawing, the sentence below; `css_class` beside
/// "plot".
std::string plot_figure(const std::string& spoken, const std::string& drawing,
                        const std::string& caption, std::string_view css_class = "");

}  // namespace fogline
