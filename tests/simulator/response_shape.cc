#include "simulator/response_shape.h"

#include <algorithm>
#include <cmath>

namespace filmsim {
namespace {

constexpr double kDecades = 3.0;
constexpr double kDarkest = 1e-5;

}  // namespace

double bent(double signal, const ResponseShape& shape, std::size_t channel) {
  if (shape.straight) return signal;
  // The curl ends three decades down, where its slope has changed by all of it.
  const double x = std::log10(std::max(signal, kDarkest));
  const double held = std::max(x, -kDecades);
  const double slope_end = shape.power[channel] - shape.curl;
  double y = shape.power[channel] * held + 0.5 * shape.curl / kDecades * held * held;
  y += slope_end * (x - held);
  const double v = std::pow(10.0, y);
  const double flattened = v * (1.0 + shape.shoulder) / (1.0 + shape.shoulder * v);
  return (flattened + shape.floor) / (1.0 + shape.floor);
}

void bend(std::vector<Plane>& signal, const ResponseShape& shape) {
  if (shape.straight) return;
  constexpr int kNodes = 4096;
  for (std::size_t c = 0; c < signal.size(); ++c) {
    // Laid out on the square root of the signal, as fine in the dark as noise is.
    std::vector<float> nodes(kNodes + 1);
    for (int i = 0; i <= kNodes; ++i) {
      const double root = 1.1 * i / kNodes;
      nodes[static_cast<std::size_t>(i)] = static_cast<float>(bent(root * root, shape, c));
    }
    for (float& value : signal[c].values) {
      const float place = std::sqrt(std::clamp(value, 0.0F, 1.2F)) * (kNodes / 1.1F);
      const auto below = std::min(static_cast<int>(place), kNodes - 1);
      const float share = place - static_cast<float>(below);
      const auto i = static_cast<std::size_t>(below);
      value = nodes[i] + share * (nodes[i + 1] - nodes[i]);
    }
  }
}

ResponseShape sample_response(Random& random) {
  ResponseShape shape;
  if (random.chance(0.2)) return shape;
  shape.straight = false;
  const double power = random.chance(0.3) ? 1.0 : random.uniform(0.6, 1.6);
  for (double& channel : shape.power) channel = power * (1.0 + random.normal(0.0, 0.015));
  if (random.chance(0.5)) shape.curl = random.uniform(-0.25, 0.25);
  if (random.chance(0.4)) shape.shoulder = random.uniform(0.0, 0.6);
  if (random.chance(0.4)) shape.floor = random.log_uniform(0.0001, 0.002);
  return shape;
}

}  // namespace filmsim
