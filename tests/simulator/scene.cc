#include "simulator/scene.h"

#include "simulator/scene_painting.h"

#include <cmath>

namespace filmsim {
namespace {

double aspect(const Canvas& canvas) {
  return static_cast<double>(canvas.plane.width) / canvas.plane.height;
}

void paint_sky(Canvas& canvas, double zenith, double horizon, double clouds) {
  Plane& plane = canvas.plane;
  for (int y = 0; y < plane.height; ++y) {
    const double t = static_cast<double>(y) / plane.height;
    const double value = zenith + (horizon - zenith) * std::min(1.0, 1.8 * t);
    std::fill(plane.row(y), plane.row(y) + plane.width, static_cast<float>(value));
  }
  add_texture(canvas, 0.8, 1.1, clouds);
}

// A crown of many small blobs, lit from the left, on a trunk.
void paint_tree(Canvas& c, double x, double foot, double size, double value) {
  paint_box(c, x - 0.05 * size, foot - size, 0.1 * size, size, value - 0.08);
  const int leaves = 170;
  for (int i = 0; i < leaves; ++i) {
    const double angle = c.random.uniform(0.0, 6.283);
    const double reach = 0.55 * size * std::sqrt(c.random.uniform());
    const double lx = std::cos(angle) * reach;
    const double ly = std::sin(angle) * reach;
    const double leaf = size * c.random.uniform(0.03, 0.09);
    const double lit = 0.12 * (-lx - ly) / size + c.random.normal(0.0, 0.06);
    paint_ellipse(c, x + lx, foot - 1.2 * size + ly, leaf, 0.8 * leaf, value + 0.15 + lit, 0.08);
  }
}

void paint_landscape(Canvas& c) {
  paint_sky(c, c.random.uniform(0.75, 0.9), c.random.uniform(0.9, 1.0),
            c.random.uniform(0.01, 0.06));
  const double horizon = c.random.uniform(0.3, 0.6);
  paint_ridge(c, horizon, 0.06, 0.9, c.random.uniform(0.6, 0.72), 0.03);
  paint_ridge(c, horizon + 0.08, 0.03, 0.6, c.random.uniform(0.35, 0.55), 0.07);
  paint_ridge(c, horizon + 0.2, 0.02, 0.9, c.random.uniform(0.35, 0.55), 0.08);
  const int trees = c.random.integer(1, 7);
  for (int i = 0; i < trees; ++i) {
    const double foot = horizon + c.random.uniform(0.15, 0.4);
    paint_tree(c, c.random.uniform(0.0, aspect(c)), foot, 0.8 * (foot - horizon) + 0.06,
               c.random.uniform(0.1, 0.25));
  }
  add_texture(c, 0.05, 0.4, 0.015);
}

void paint_building(Canvas& c, double x, double width, double top) {
  const double wall = c.random.uniform(0.3, 0.8);
  paint_box(c, x, top, width, 1.0, wall);
  paint_box(c, x - 0.01, top, width + 0.02, 0.015, wall + 0.1);
  paint_box(c, x + 0.82 * width, top + 0.015, 0.18 * width, 1.0, wall - 0.2);
  const double step = c.random.uniform(0.05, 0.1);
  const double window = c.random.chance(0.8) ? c.random.uniform(0.03, 0.2) : 0.9;
  for (double wy = top + 0.4 * step; wy < 0.85; wy += 1.4 * step) {
    for (double wx = x + 0.4 * step; wx + 0.6 * step < x + width; wx += 1.1 * step) {
      paint_box(c, wx - 0.05 * step, wy - 0.05 * step, 0.6 * step, 0.95 * step, wall + 0.12);
      paint_box(c, wx, wy, 0.5 * step, 0.8 * step, window + c.random.uniform(-0.03, 0.12));
      paint_box(c, wx + 0.22 * step, wy, 0.05 * step, 0.8 * step, wall + 0.1);
    }
  }
}

void paint_person(Canvas& c) {
  const double x = c.random.uniform(0.0, aspect(c));
  const double h = c.random.uniform(0.08, 0.2);
  const double foot = c.random.uniform(0.84, 0.98);
  const double coat = c.random.uniform(0.02, 0.6);
  for (const double side : {-0.05, 0.05}) {
    paint_ellipse(c, x + side * h, foot - 0.22 * h, 0.05 * h, 0.24 * h, coat - 0.05, 0.1);
  }
  paint_ellipse(c, x, foot - 0.62 * h, 0.14 * h, 0.27 * h, coat, 0.15);
  paint_ellipse(c, x, foot - 0.93 * h, 0.06 * h, 0.08 * h, 0.75, 0.2);
}

void paint_street(Canvas& c) {
  paint_sky(c, c.random.uniform(0.8, 0.95), c.random.uniform(0.9, 1.0), 0.02);
  for (double x = -0.1; x < aspect(c);) {
    const double width = c.random.uniform(0.2, 0.5);
    if (!c.random.chance(0.2)) paint_building(c, x, width, c.random.uniform(-0.1, 0.55));
    x += width;
  }
  paint_ridge(c, c.random.uniform(0.8, 0.88), 0.003, 1.0, c.random.uniform(0.35, 0.5), 0.04);
  if (c.random.chance(0.4)) paint_tree(c, c.random.uniform(0.0, aspect(c)), 0.9, 0.35, 0.12);
  for (int i = c.random.integer(0, 7); i > 0; --i) paint_person(c);
  add_texture(c, 0.3, 0.6, 0.025);
}

void paint_backdrop(Canvas& c) {
  std::fill(c.plane.values.begin(), c.plane.values.end(),
            static_cast<float>(c.random.uniform(0.15, 0.7)));
  add_texture(c, 1.0, 1.6, 0.08);
  const int discs = c.random.chance(0.4) ? c.random.integer(3, 14) : 0;  // far lights out of focus
  for (int i = 0; i < discs; ++i) {
    const double radius = c.random.uniform(0.02, 0.06);
    paint_ellipse(c, c.random.uniform(0.0, aspect(c)), c.random.uniform(0.0, 0.8), radius, radius,
                  c.random.uniform(0.5, 0.95), 0.0);
  }
}

void paint_portrait(Canvas& c) {
  paint_backdrop(c);
  const double x = aspect(c) * c.random.uniform(0.35, 0.65);
  const double size = c.random.uniform(0.14, 0.24);
  const double y = c.random.uniform(0.35, 0.5);
  const double hair = c.random.uniform(0.0, 0.4);
  const double skin = c.random.uniform(0.75, 0.95);
  paint_ellipse(c, x, y + 3.2 * size, 2.2 * size, 2.0 * size, c.random.uniform(0.05, 0.9), 0.15);
  paint_ellipse(c, x, y + 1.1 * size, 0.4 * size, 0.6 * size, skin - 0.2, 0.2);
  paint_ellipse(c, x, y - 0.25 * size, 1.0 * size, 1.15 * size, hair, 0.1);
  paint_ellipse(c, x, y + 0.08 * size, 0.74 * size, 1.0 * size, skin, 0.35);
  paint_ellipse(c, x + 0.1 * size, y - 0.85 * size, 0.8 * size, 0.35 * size, hair, 0.1);
  for (const double side : {-0.3, 0.3}) {
    paint_ellipse(c, x + side * size, y - 0.2 * size, 0.17 * size, 0.035 * size, hair, 0.0);
    paint_ellipse(c, x + side * size, y - 0.06 * size, 0.12 * size, 0.05 * size, skin - 0.25, 0.0);
    paint_ellipse(c, x + side * size, y - 0.06 * size, 0.05 * size, 0.05 * size, 0.05, 0.0);
  }
  paint_ellipse(c, x + 0.06 * size, y + 0.2 * size, 0.09 * size, 0.2 * size, skin - 0.15, 0.1);
  paint_ellipse(c, x, y + 0.52 * size, 0.24 * size, 0.06 * size, skin - 0.35, 0.05);
  add_texture(c, 0.08, 0.6, 0.02);
}

void paint_night(Canvas& c) {
  paint_ridge(c, -1.0, 0.0, 1.0, 0.04, 0.03);
  paint_ridge(c, c.random.uniform(0.5, 0.8), 0.05, 0.6, 0.0, 0.02);
  const int windows = c.random.integer(4, 25);
  for (int i = 0; i < windows; ++i) {
    const double x = c.random.uniform(0.0, aspect(c));
    paint_box(c, x, c.random.uniform(0.2, 0.7), 0.02, 0.03, c.random.uniform(0.4, 0.8));
  }
  const int lamps = c.random.integer(2, 7);
  for (int i = 0; i < lamps; ++i) {
    const double x = c.random.uniform(0.0, aspect(c));
    paint_lamp(c, x, c.random.uniform(0.15, 0.8), c.random.uniform(0.008, 0.03),
               c.random.uniform(0.5, 0.9));
  }
}

void paint_snow(Canvas& c) {
  paint_sky(c, c.random.uniform(0.7, 0.85), 0.85, 0.03);
  paint_ridge(c, c.random.uniform(0.25, 0.5), 0.07, 1.0, c.random.uniform(0.88, 0.97), 0.02);
  const int trees = c.random.integer(2, 12);
  for (int i = 0; i < trees; ++i) {
    const double foot = c.random.uniform(0.5, 0.9);
    paint_tree(c, c.random.uniform(0.0, aspect(c)), foot, 0.3 * foot, c.random.uniform(0.03, 0.15));
  }
  add_texture(c, 0.2, 0.8, 0.012);
}

void paint_interior(Canvas& c) {
  paint_ridge(c, -1.0, 0.0, 1.0, c.random.uniform(0.15, 0.35), 0.04);
  const double x = c.random.uniform(0.1, 0.7) * aspect(c);
  paint_box(c, x, 0.15, 0.32, 0.4, 0.97);
  paint_box(c, x + 0.15, 0.15, 0.02, 0.4, 0.2);
  paint_box(c, x, 0.33, 0.32, 0.02, 0.2);
  paint_ridge(c, 0.75, 0.01, 1.0, c.random.uniform(0.2, 0.5), 0.08);
  for (int i = 0; i < 5; ++i) {
    paint_ellipse(c, c.random.uniform(0.0, aspect(c)), c.random.uniform(0.6, 0.9),
                  c.random.uniform(0.05, 0.2), c.random.uniform(0.05, 0.2),
                  c.random.uniform(0.05, 0.7), 0.2);
  }
}

void paint_texture(Canvas& c) {
  paint_ridge(c, -1.0, 0.0, 1.0, 0.5, 0.0);
  add_texture(c, 1.0, 0.9, 0.16);
}

void paint_scene(Canvas& c, SceneKind kind) {
  switch (kind) {
    case SceneKind::kLandscape:
      return paint_landscape(c);
    case SceneKind::kStreet:
      return paint_street(c);
    case SceneKind::kPortrait:
      return paint_portrait(c);
    case SceneKind::kNight:
      return paint_night(c);
    case SceneKind::kSnow:
      return paint_snow(c);
    case SceneKind::kInterior:
      return paint_interior(c);
    case SceneKind::kTexture:
      return paint_texture(c);
    case SceneKind::kEvenWall:
    case SceneKind::kPrintedWedge:
      return;
  }
}

// Stretches the picture so that its extreme spots (all but one in a thousand at each end) lie
// `log_range` apart; the few beyond are held there.
void stretch_to_range(Plane& plane, double log_range) {
  constexpr double kBeyond = 0.001;
  std::vector<float> sorted;
  for (std::size_t i = 0; i < plane.values.size(); i += 7) sorted.push_back(plane.values[i]);
  std::sort(sorted.begin(), sorted.end());
  const auto beyond = static_cast<std::size_t>(kBeyond * static_cast<double>(sorted.size()));
  const float dark = sorted[beyond];
  const float bright = sorted[sorted.size() - 1 - beyond];
  const float scale = static_cast<float>(log_range) / std::max(bright - dark, 1e-6F);
  for (float& value : plane.values) value = scale * (std::clamp(value, dark, bright) - dark);
}

// Lens falloff, then flare, then the level: all on luminance itself.
void through_the_lens(Plane& plane, const SceneSettings& settings) {
  const double half_w = 0.5 * plane.width;
  const double half_h = 0.5 * plane.height;
  const double corner = half_w * half_w + half_h * half_h;
  double sum = 0.0;
  for (int y = 0; y < plane.height; ++y) {
    for (int x = 0; x < plane.width; ++x) {
      const double dx = x + 0.5 - half_w;
      const double dy = y + 0.5 - half_h;
      const double loss = settings.falloff * (dx * dx + dy * dy) / corner;
      const float luminance = std::pow(10.0F, plane.at(x, y) - static_cast<float>(loss));
      plane.at(x, y) = luminance;
      sum += luminance;
    }
  }
  const double mean = sum / static_cast<double>(plane.values.size());
  const auto flare = static_cast<float>(settings.flare * mean);
  const auto level = static_cast<float>(1.0 / (mean * (1.0 + settings.flare)));
  for (float& value : plane.values) value = std::log10((value + flare) * level);
}

Plane transposed(const Plane& plane) {
  Plane result(plane.height, plane.width);
  for (int y = 0; y < plane.height; ++y) {
    for (int x = 0; x < plane.width; ++x) result.at(plane.height - 1 - y, x) = plane.at(x, y);
  }
  return result;
}

Plane printed_wedge(const SceneSettings& settings, int width_px, int height_px) {
  Plane wedge(width_px, height_px);
  const int steps = static_cast<int>(settings.wedge_densities.size());
  for (int y = 0; y < height_px; ++y) {
    for (int x = 0; x < width_px; ++x) {
      const int step = settings.wedge_downwards ? y * steps / height_px : x * steps / width_px;
      wedge.at(x, y) =
          static_cast<float>(-settings.wedge_densities[static_cast<std::size_t>(step)]);
    }
  }
  return wedge;
}

}  // namespace

const char* scene_kind_name(SceneKind kind) {
  switch (kind) {
    case SceneKind::kLandscape:
      return "landscape";
    case SceneKind::kStreet:
      return "street";
    case SceneKind::kPortrait:
      return "portrait";
    case SceneKind::kNight:
      return "night";
    case SceneKind::kSnow:
      return "snow";
    case SceneKind::kInterior:
      return "interior";
    case SceneKind::kTexture:
      return "texture";
    case SceneKind::kEvenWall:
      return "even-wall";
    case SceneKind::kPrintedWedge:
      return "printed-wedge";
  }
  return "unknown";
}

Plane scene_log_luminance(const SceneSettings& settings, int width_px, int height_px) {
  if (settings.kind == SceneKind::kPrintedWedge) {
    return printed_wedge(settings, width_px, height_px);
  }
  if (settings.kind == SceneKind::kEvenWall) {
    Plane wall(width_px, height_px);
    through_the_lens(wall, settings);
    return wall;
  }
  const int w = settings.turned ? height_px : width_px;
  const int h = settings.turned ? width_px : height_px;
  Canvas canvas{Plane(w, h), Random(settings.seed)};
  paint_scene(canvas, settings.kind);
  if (settings.black_border) {
    paint_ridge(canvas, canvas.random.uniform(0.6, 0.8), 0.06, 0.9, -0.05, 0.0);
  }
  stretch_to_range(canvas.plane, settings.log_range);
  if (settings.turned) canvas.plane = transposed(canvas.plane);
  if (settings.upside_down) {
    std::reverse(canvas.plane.values.begin(), canvas.plane.values.end());
  }
  through_the_lens(canvas.plane, settings);
  return canvas.plane;
}

}  // namespace filmsim
