#include "simulator/lamp_fall_off.h"

#include <cmath>

namespace filmsim {
namespace {

constexpr double kCorner = 0.70710678;  // from the middle, where both shares are one half

double bulge(const LampFallOff& lamp, double x, double y) {
  const double stretch = std::sqrt(lamp.aspect);
  const double away = std::hypot((x - lamp.middle.x) * stretch, (y - lamp.middle.y) / stretch);
  // The furthest corner has the whole ratio.
  const double furthest = std::hypot((0.5 + std::abs(lamp.middle.x)) * stretch,
                                     (0.5 + std::abs(lamp.middle.y)) / stretch);
  return std::pow(lamp.ratio, -std::pow(away / furthest, lamp.power));
}

double lens_loss(double vignetting, double x, double y) {
  const double away = std::hypot(x, y) / kCorner;
  return 1.0 - vignetting * std::pow(away, 4.0);
}

}  // namespace

double lamp_light(const LampFallOff& lamp, double x, double y, std::size_t channel) {
  double light = bulge(lamp, x, y) * lens_loss(lamp.vignetting, x, y);
  light = std::pow(light, 1.0 + lamp.colour_drift[channel]);
  for (const HotSpot& spot : lamp.hot_spots) {
    const double away = std::hypot(x - spot.middle.x, y - spot.middle.y) / spot.width;
    light *= 1.0 + spot.gain * std::exp(-0.5 * away * away);
  }
  return light;
}

void light_by_lamp(std::vector<Plane>& light, const LampFallOff& lamp) {
  // Smooth: worked out on a coarse grid.
  constexpr int kCells = 96;
  for (std::size_t c = 0; c < light.size(); ++c) {
    Plane& plane = light[c];
    Plane grid(kCells + 1, kCells + 1);
    for (int gy = 0; gy <= kCells; ++gy) {
      for (int gx = 0; gx <= kCells; ++gx) {
        grid.at(gx, gy) =
            static_cast<float>(lamp_light(lamp, static_cast<double>(gx) / kCells - 0.5,
                                          static_cast<double>(gy) / kCells - 0.5, c));
      }
    }
    for (int y = 0; y < plane.height; ++y) {
      const float gy = (static_cast<float>(y) + 0.5F) / static_cast<float>(plane.height) * kCells;
      float* row = plane.row(y);
      for (int x = 0; x < plane.width; ++x) {
        const float gx = (static_cast<float>(x) + 0.5F) / static_cast<float>(plane.width) * kCells;
        row[x] *= grid.sample(gx, gy);
      }
    }
  }
}

}  // namespace filmsim
