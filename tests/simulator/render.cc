#include "simulator/render.h"

#include "simulator/foreign_fitness.h"
#include "simulator/random.h"
#include "simulator/strip_exposure.h"
#include "simulator/surge.h"
#include "simulator/tell_truth.h"

#include <algorithm>
#include <cmath>

namespace filmsim {
namespace {

constexpr double kHolderLight = 1e-4;  // black plastic: density 4
constexpr float kLn10 = 2.302585093F;

// Densities that don't change over a strip, in one channel.
struct Even {
  float density;
  float stain;
  float haze;
};

std::vector<Even> even_parts(const Scenario& scenario, std::size_t channel) {
  std::vector<Even> parts;
  for (const StripPlan& strip : scenario.strips) {
    const FilmStock& s = strip.stock;
    parts.push_back({static_cast<float>(s.base[channel] + s.fog + s.dye_left[channel] +
                                        s.yellow_stain[channel]),
                     static_cast<float>(s.image_stain[channel]),
                     static_cast<float>(s.haze[channel])});
  }
  return parts;
}

// Density of a strip's silver in that scanner's light.
float silver_density(float net, const Scenario& scenario, const FilmStock& stock,
                     std::size_t channel) {
  if (!scenario.foreign) return seen_density(net, scenario.scanner.callier);
  return seen_silver(net, stock.fog, scenario.foreign->callier, channel);
}

Plane light_past_film(const FilmPlanes& planes, const Scenario& scenario, std::size_t channel) {
  const std::vector<Even> parts = even_parts(scenario, channel);
  const auto holder_light =
      static_cast<float>(scenario.foreign ? scenario.foreign->surround_light : kHolderLight);
  Plane light(planes.net.width, planes.net.height);
  for (std::size_t i = 0; i < light.values.size(); ++i) {
    float passed = 1.0F;
    const float film = planes.film.values[i];
    if (film > 0.0F) {
      const std::size_t strip = planes.strip[i] - 1U;
      const Even& even = parts[strip];
      const float net = planes.net.values[i];
      float density = even.density + even.stain * net + planes.added.values[i] +
                      silver_density(net, scenario, scenario.strips[strip].stock, channel);
      if (!planes.haze.values.empty()) density += even.haze * planes.haze.values[i];
      passed += film * (std::exp(-kLn10 * density) - 1.0F);
    }
    const float open = planes.open.values[i];
    light.values[i] = open * passed + (1.0F - open) * holder_light;
  }
  return light;
}

// A positive instead of a negative: its own luminance, white at the bare light.
void lay_positive(std::vector<Plane>& light, const SceneSettings& picture) {
  const Plane scene = scene_log_luminance(picture, light[0].width, light[0].height);
  const float white = *std::max_element(scene.values.begin(), scene.values.end());
  for (Plane& plane : light) {
    for (std::size_t i = 0; i < scene.values.size(); ++i) {
      plane.values[i] *= std::pow(10.0F, scene.values[i] - white);
    }
  }
}

// Pixels of bare light at least this far (0.35 mm) from any film or holder: where a reader would
// look for density zero.
std::vector<std::size_t> bare_pixels(const FilmPlanes& planes, double pixels_per_mm) {
  const int reach = std::max(1, static_cast<int>(std::lround(0.35 * pixels_per_mm)));
  std::vector<std::size_t> bare;
  const auto is_bare = [&](int x, int y) {
    const std::size_t i = planes.net.index(x, y);
    return planes.film.values[i] <= 0.0F && planes.open.values[i] >= 1.0F;
  };
  for (int y = reach; y < planes.net.height - reach; ++y) {
    for (int x = reach; x < planes.net.width - reach; ++x) {
      if (is_bare(x, y) && is_bare(x - reach, y) && is_bare(x + reach, y) &&
          is_bare(x, y - reach) && is_bare(x, y + reach)) {
        bare.push_back(planes.net.index(x, y));
      }
    }
  }
  return bare;
}

// Where no bare light shows, the exposure is set on the clear film instead.
std::vector<std::size_t> brightest_film(const FilmPlanes& planes) {
  std::vector<std::size_t> clear;
  for (std::size_t i = 0; i < planes.net.values.size(); ++i) {
    if (planes.film.values[i] >= 1.0F && planes.open.values[i] >= 1.0F &&
        planes.what[i] == kUnexposed) {
      clear.push_back(i);
    }
  }
  return clear;
}

// What a makeshift lamp, a mask and a soft lens do before the sensor.
void foreign_light(std::vector<Plane>& light, const ForeignLaws& laws, const Plane& open,
                   double pixels_per_mm) {
  light_by_lamp(light, laws.lamp);
  for (Plane& plane : light) {
    shade_by_mask(plane, open, laws.mask, pixels_per_mm);
    add_halo(plane, laws.halo, pixels_per_mm);
  }
}

}  // namespace

Simulated render(Scenario scenario) {
  Simulated result;
  result.scenario = std::move(scenario);
  const Scenario& plan = result.scenario;
  const CameraGeometry camera(plan.width_px, plan.height_px, plan.pixels_per_mm, plan.camera);
  std::vector<StripGeometry> geometries;
  for (const StripPlan& strip : plan.strips) geometries.emplace_back(strip.geometry);

  FilmPlanes planes = lay_film(plan, camera, geometries);
  add_grain(planes, plan);
  result.truth.marks = draw_marks(planes, plan, camera, geometries);
  for (DrawnMark& streak : visible_surge(planes, plan, camera, geometries)) {
    result.truth.marks.push_back(streak);
  }

  std::vector<Plane> light;
  for (std::size_t c = 0; c < 3; ++c) light.push_back(light_past_film(planes, plan, c));
  if (plan.positive_picture) lay_positive(light, *plan.positive_picture);
  const std::vector<std::size_t> bare = bare_pixels(planes, plan.pixels_per_mm);
  const std::vector<std::size_t> clear = brightest_film(planes);
  if (plan.foreign) foreign_light(light, *plan.foreign, planes.open, plan.pixels_per_mm);
  expose_sensor(light, plan.scanner, plan.pixels_per_mm, bare.empty() ? clear : bare,
                derived_seed(plan.seed, 31));
  bend(light, plan.scanner.response);
  if (plan.foreign && plan.foreign->finish) {
    finish(light, *plan.foreign->finish, plan.pixels_per_mm);
  }
  result.picture = encode(light, plan.encoding, plan.scanner.sharpening);

  tell_truth(result, planes, camera, geometries, bare);
  if (plan.foreign) judge_foreign(result, bare, clear);
  return result;
}

}  // namespace filmsim
