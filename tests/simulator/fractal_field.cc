#include "simulator/fractal_field.h"

#include <cmath>
#include <numeric>

namespace filmsim {
namespace {

constexpr double kFinestPx = 2.0;

struct Tap {
  int index;
  float weight;
};

// Smoothstep weights hide the lattice, which plain linear ones show as creases.
std::vector<Tap> taps(int length, double cell, double offset) {
  std::vector<Tap> result(static_cast<std::size_t>(length));
  for (int i = 0; i < length; ++i) {
    const double position = i / cell + offset;
    const double whole = std::floor(position);
    const double t = position - whole;
    result[static_cast<std::size_t>(i)] = {static_cast<int>(whole),
                                           static_cast<float>(t * t * (3.0 - 2.0 * t))};
  }
  return result;
}

void add_octave(Plane& field, double cell, float amplitude, Random& random) {
  const std::vector<Tap> columns = taps(field.width, cell, random.uniform());
  const std::vector<Tap> rows = taps(field.height, cell, random.uniform());
  Plane lattice(columns.back().index + 2, rows.back().index + 2);
  for (float& value : lattice.values) value = amplitude * random.quick_normal();
  std::vector<float> line(static_cast<std::size_t>(lattice.width));
  for (int y = 0; y < field.height; ++y) {
    const Tap& tap = rows[static_cast<std::size_t>(y)];
    const float* upper = lattice.row(tap.index);
    const float* lower = lattice.row(tap.index + 1);
    for (std::size_t i = 0; i < line.size(); ++i) {
      line[i] = upper[i] + tap.weight * (lower[i] - upper[i]);
    }
    float* out = field.row(y);
    for (int x = 0; x < field.width; ++x) {
      const Tap& column = columns[static_cast<std::size_t>(x)];
      const auto i = static_cast<std::size_t>(column.index);
      out[x] += line[i] + column.weight * (line[i + 1] - line[i]);
    }
  }
}

void standardise(std::vector<float>& values) {
  const double n = static_cast<double>(values.size());
  const double mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
  double square = 0.0;
  for (const float value : values) square += (value - mean) * (value - mean);
  const double scale = 1.0 / std::max(std::sqrt(square / n), 1e-12);
  for (float& value : values) value = static_cast<float>((value - mean) * scale);
}

}  // namespace

Plane fractal_field(int width, int height, double coarsest_px, double roughness, Random& random) {
  Plane field(width, height);
  double amplitude = 1.0;
  for (double cell = std::max(coarsest_px, kFinestPx); cell >= kFinestPx; cell /= 2.0) {
    add_octave(field, cell, static_cast<float>(amplitude), random);
    amplitude *= std::pow(2.0, -roughness);
  }
  standardise(field.values);
  return field;
}

std::vector<float> fractal_line(int length, double coarsest_px, double roughness, Random& random) {
  return fractal_field(length, 1, coarsest_px, roughness, random).values;
}

}  // namespace filmsim
