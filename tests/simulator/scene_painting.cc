#include "simulator/scene_painting.h"

#include "simulator/fractal_field.h"

#include <cmath>

namespace filmsim {
namespace {

struct Span {
  int first;
  int last;  // one past
};

Span clipped_span(double from, double to, int length) {
  const int first = std::clamp(static_cast<int>(std::floor(from)), 0, length);
  return {first, std::clamp(static_cast<int>(std::ceil(to)), first, length)};
}

}  // namespace

void paint_ridge(Canvas& canvas, double level, double raggedness, double roughness, double value,
                 double texture) {
  Plane& plane = canvas.plane;
  const std::vector<float> line =
      fractal_line(plane.width, 0.6 * canvas.unit(), roughness, canvas.random);
  const Plane grain =
      fractal_field(plane.width, plane.height, 0.2 * canvas.unit(), 0.7, canvas.random);
  for (int x = 0; x < plane.width; ++x) {
    const double top = canvas.unit() * (level + raggedness * line[static_cast<std::size_t>(x)]);
    for (int y = std::max(0, static_cast<int>(top)); y < plane.height; ++y) {
      const double share = std::clamp(y + 1.0 - top, 0.0, 1.0);
      const double paint = value + texture * grain.at(x, y);
      plane.at(x, y) += static_cast<float>(share * (paint - plane.at(x, y)));
    }
  }
}

void paint_box(Canvas& canvas, double x, double y, double width, double height, double value) {
  const double unit = canvas.unit();
  const Span columns = clipped_span(x * unit, (x + width) * unit, canvas.plane.width);
  const Span rows = clipped_span(y * unit, (y + height) * unit, canvas.plane.height);
  for (int row = rows.first; row < rows.last; ++row) {
    std::fill(canvas.plane.row(row) + columns.first, canvas.plane.row(row) + columns.last,
              static_cast<float>(value));
  }
}

void paint_ellipse(Canvas& canvas, double x, double y, double radius_x, double radius_y,
                   double value, double shade) {
  constexpr double kSoft = 0.06;  // width of the edge as a share of the radius
  const double unit = canvas.unit();
  const Span columns =
      clipped_span((x - 1.1 * radius_x) * unit, (x + 1.1 * radius_x) * unit, canvas.plane.width);
  const Span rows =
      clipped_span((y - 1.1 * radius_y) * unit, (y + 1.1 * radius_y) * unit, canvas.plane.height);
  for (int row = rows.first; row < rows.last; ++row) {
    for (int column = columns.first; column < columns.last; ++column) {
      const double dx = (column / unit - x) / radius_x;
      const double dy = (row / unit - y) / radius_y;
      const double radius = std::hypot(dx, dy);
      const double share = std::clamp((1.0 - radius) / kSoft + 0.5, 0.0, 1.0);
      const double round = 0.15 * std::sqrt(std::max(0.0, 1.0 - radius * radius));
      const double paint = value + round - 0.15 - shade * 0.5 * (1.0 + dx);
      float& pixel = canvas.plane.at(column, row);
      pixel += static_cast<float>(share * (paint - pixel));
    }
  }
}

void paint_lamp(Canvas& canvas, double x, double y, double radius, double glow) {
  const double unit = canvas.unit();
  for (int row = 0; row < canvas.plane.height; ++row) {
    for (int column = 0; column < canvas.plane.width; ++column) {
      const double r = std::hypot(column / unit - x, row / unit - y) / radius;
      float& pixel = canvas.plane.at(column, row);
      if (r < 1.0) pixel = 1.0F;
      // Halation and haze: log luminance falls by two units of log for ten radii.
      const double halo = glow * (1.0 - 0.33 * std::log10(1.0 + 6.0 * r * r));
      pixel = std::max(pixel, static_cast<float>(halo));
    }
  }
}

void add_texture(Canvas& canvas, double coarsest, double roughness, double amount) {
  const Plane field = fractal_field(canvas.plane.width, canvas.plane.height,
                                    coarsest * canvas.unit(), roughness, canvas.random);
  for (std::size_t i = 0; i < field.values.size(); ++i) {
    canvas.plane.values[i] += static_cast<float>(amount) * field.values[i];
  }
}

}  // namespace filmsim
