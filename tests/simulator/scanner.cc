#include "simulator/scanner.h"

#include "simulator/filters.h"
#include "simulator/random.h"

#include <algorithm>
#include <cmath>

namespace filmsim {
namespace {

constexpr double kCallierKnee = 0.3;  // net density above which the factor is nearly constant
constexpr float kLn10 = 2.302585093F;

// Lamp and lens: never brighter than 1, so that the exposure rules keep their meaning.
void light_unevenly(Plane& light, double tilt_x, double tilt_y, double bulge) {
  if (tilt_x == 0.0 && tilt_y == 0.0 && bulge == 0.0) return;
  const double brightest = 0.5 * (std::abs(tilt_x) + std::abs(tilt_y));
  for (int y = 0; y < light.height; ++y) {
    const double ny = (y + 0.5) / light.height - 0.5;
    float* row = light.row(y);
    for (int x = 0; x < light.width; ++x) {
      const double nx = (x + 0.5) / light.width - 0.5;
      const double density =
          brightest + tilt_x * nx + tilt_y * ny + 2.0 * bulge * (nx * nx + ny * ny);
      row[x] *= std::exp(-kLn10 * static_cast<float>(density));
    }
  }
}

void convert_to_steps(Plane& signal, int bits) {
  if (bits == 0) return;
  const auto steps = static_cast<float>((1 << bits) - 1);
  for (float& value : signal.values) value = std::round(value * steps) / steps;
}

double exposure_scale(const std::vector<Plane>& light, const ScannerSettings& settings,
                      const std::vector<std::size_t>& bare_px) {
  std::vector<float> bare;
  for (const std::size_t i : bare_px) {
    float brightest = 0.0F;
    for (const Plane& plane : light) brightest = std::max(brightest, plane.values[i]);
    bare.push_back(brightest);
  }
  if (bare.empty()) return settings.bare_level;
  std::sort(bare.begin(), bare.end());
  const bool level = settings.exposure_rule == ExposureRule::kLevel;
  const double rank =
      (level ? 0.999 : 1.0 - settings.clipped_share) * static_cast<double>(bare.size() - 1);
  return (level ? settings.bare_level : 1.0) / bare[static_cast<std::size_t>(rank)];
}

void add_noise(Plane& signal, const ScannerSettings& settings, double scale, std::uint64_t seed) {
  Random random(seed);
  const auto gain = static_cast<float>(scale);
  const auto offset = static_cast<float>(settings.black_offset);
  const auto shot = static_cast<float>(1.0 / settings.full_well);
  const auto read = static_cast<float>(std::pow(settings.read_noise / settings.full_well, 2.0));
  for (float& value : signal.values) {
    const float level = value * gain;
    value = level + offset + std::sqrt(std::max(level, 0.0F) * shot + read) * random.quick_normal();
  }
}

}  // namespace

float seen_density(float net_density, double callier) {
  if (callier == 1.0) return net_density;
  const float net = std::max(net_density, 0.0F);
  const auto excess = static_cast<float>(callier - 1.0);
  return net_density * (1.0F + excess * (1.0F - std::exp(-net / static_cast<float>(kCallierKnee))));
}

void expose_sensor(std::vector<Plane>& light, const ScannerSettings& settings, double pixels_per_mm,
                   const std::vector<std::size_t>& bare_px, std::uint64_t seed) {
  const double blur_px = settings.blur_um * 1e-3 * pixels_per_mm;
  for (std::size_t c = 0; c < light.size(); ++c) {
    light_unevenly(light[c], settings.tilt_x[c], settings.tilt_y[c], settings.bulge);
    add_glare(light[c], settings.glare, pixels_per_mm);
    gaussian_blur(light[c], blur_px, blur_px);
    for (float& value : light[c].values) value *= static_cast<float>(settings.lamp[c]);
  }
  const double scale = exposure_scale(light, settings, bare_px);
  for (std::size_t c = 0; c < light.size(); ++c) {
    add_noise(light[c], settings, scale, derived_seed(seed, c));
    convert_to_steps(light[c], settings.adc_bits);
  }
}

}  // namespace filmsim
