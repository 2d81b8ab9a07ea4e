// A drawn step wedge in a picture of light.
#pragma once

#include "base/seeded_noise.h"

#include <fogline/base/quantity.h>
#include <fogline/base/raster.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace fogline::drawn {

/// What separates one step from the next.
enum class Between { nothing, clear_gap, dark_joint };

struct Wedge {
  int steps = 21;
  double first_density = 0.05;
  double step_density = 0.15;
  double pitch_px = 24.0;
  double size_px = 60.0;
  Between between = Between::nothing;
  double joint_px = 3.0;
  /// Middle of the wedge and direction of rising density, degrees clockwise from +x.
  PointPx middle{400.0, 200.0};
  double direction_deg = 0.0;
  /// Extra gap before each step where strips lie loosely, px.
  std::vector<double> shifts_px;
  double bare_light = 0.8;
  /// Density around the wedge: 0 bare light, 4 an opaque mask.
  double surround_density = 0.0;
  /// Of the light itself, everywhere (stray light), and of its noise.
  double floor = 0.0005;
  double noise = 0.004;
  double blur_px = 1.0;
  unsigned seed = 1;

  [[nodiscard]] double density(int step) const { return first_density + step_density * step; }
};

/// Middle of a step.
inline PointPx step_middle(const Wedge& wedge, int step) {
  const double turn = wedge.direction_deg * std::numbers::pi / 180.0;
  double place = (step - 0.5 * (wedge.steps - 1)) * wedge.pitch_px;
  for (int i = 0; i <= step && i < static_cast<int>(wedge.shifts_px.size()); ++i) {
    place += wedge.shifts_px[static_cast<std::size_t>(i)];
  }
  return {wedge.middle.x + place * std::cos(turn), wedge.middle.y + place * std::sin(turn)};
}

inline double wedge_density(const Wedge& wedge, double x, double y) {
  const double turn = wedge.direction_deg * std::numbers::pi / 180.0;
  double density = wedge.surround_density;
  const double dx = x - wedge.middle.x;
  const double dy = y - wedge.middle.y;
  const double across = -dx * std::sin(turn) + dy * std::cos(turn);
  if (std::abs(across) > 0.5 * wedge.size_px) {
    return density;
  }
  const double along = dx * std::cos(turn) + dy * std::sin(turn);
  for (int i = 0; i < wedge.steps; ++i) {
    const PointPx middle = step_middle(wedge, i);
    const double place =
        (middle.x - wedge.middle.x) * std::cos(turn) + (middle.y - wedge.middle.y) * std::sin(turn);
    const double off = std::abs(along - place);
    if (off > 0.5 * wedge.pitch_px) {
      continue;
    }
    const bool joint = off > 0.5 * wedge.pitch_px - 0.5 * wedge.joint_px;
    if (joint && wedge.between == Between::dark_joint) {
      return 3.5;
    }
    if (joint && wedge.between == Between::clear_gap) {
      return wedge.surround_density;
    }
    return wedge.density(i);
  }
  return density;
}

/// Light of every pixel, blurred a little, before noise.
inline Raster<float> wedge_light(const Wedge& wedge, int width_px, int height_px) {
  Raster<float> light(width_px, height_px);
  constexpr int samples = 3;
  for (int y = 0; y < height_px; ++y) {
    for (int x = 0; x < width_px; ++x) {
      double sum = 0.0;
      for (int k = 0; k < samples * samples; ++k) {
        const double sx = x + 0.5 + wedge.blur_px * (k % samples - 1);
        const double sy = y + 0.5 + wedge.blur_px * (k / samples - 1);
        sum += transmittance_from_density(wedge_density(wedge, sx, sy)) / (samples * samples);
      }
      light.at(x, y) = static_cast<float>(wedge.bare_light * (sum + wedge.floor));
    }
  }
  return light;
}

/// Adds noise (a part of the light and a little of its own) and holds light at the top code.
inline void add_noise(Raster<float>& light, const Wedge& wedge) {
  SeededNoise noise(wedge.seed);
  for (float& value : light.samples()) {
    const double v = static_cast<double>(value);
    const double noisy = v * (1.0 + noise.normal(wedge.noise)) + noise.normal(2e-5);
    value = static_cast<float>(std::clamp(noisy, 0.0, 1.0));
  }
}

inline Raster<float> noisy_wedge(const Wedge& wedge, int width_px, int height_px) {
  Raster<float> light = wedge_light(wedge, width_px, height_px);
  add_noise(light, wedge);
  return light;
}

}  // namespace fogline::drawn
