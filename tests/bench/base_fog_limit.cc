#include "base_fog_limit.h"

#include "statistics.h"

#include <array>
#include <cmath>
#include <utility>
#include <vector>

namespace bench {

namespace {

using Light = std::array<double, 3>;

/// Half a patch: 0.5 mm fits into a hole (1.98 mm along the film) with 0.5 mm to spare for blur.
constexpr double half_patch_mm = 0.5;
constexpr Light visual_weights{0.2126, 0.7152, 0.0722};

/// Mean light of a patch, grey in all three places; absent where it leaves the picture.
std::optional<Light> patch_light(const filmsim::Simulated& simulated, filmsim::Point middle) {
  const filmsim::Picture& picture = simulated.picture;
  const double half_px = half_patch_mm * simulated.scenario.pixels_per_mm;
  const int x0 = static_cast<int>(std::ceil(middle.x - half_px));
  const int x1 = static_cast<int>(std::floor(middle.x + half_px));
  const int y0 = static_cast<int>(std::ceil(middle.y - half_px));
  const int y1 = static_cast<int>(std::floor(middle.y + half_px));
  if (x0 < 0 || y0 < 0 || x1 > picture.width || y1 > picture.height || x1 <= x0 || y1 <= y0) {
    return std::nullopt;
  }
  Light light{};
  const double share = 1.0 / (static_cast<double>(x1 - x0) * (y1 - y0));
  for (int y = y0; y < y1; ++y) {
    for (int x = x0; x < x1; ++x) {
      for (int c = 0; c < 3; ++c) {
        const double level =
            static_cast<double>(picture.code(x, y, picture.channels == 1 ? 0 : c)) / picture.top();
        light[static_cast<std::size_t>(c)] +=
            share * filmsim::light_from_encoded(level, simulated.scenario.encoding);
      }
    }
  }
  return light;
}

std::optional<double> density_between(const filmsim::Simulated& simulated, filmsim::Point a,
                                      filmsim::Point b) {
  const auto first = patch_light(simulated, a);
  const auto second = patch_light(simulated, b);
  const auto film = patch_light(simulated, {0.5 * (a.x + b.x), 0.5 * (a.y + b.y)});
  if (!first || !second || !film) {
    return std::nullopt;
  }
  double transmittance = 0.0;
  for (std::size_t c = 0; c < film->size(); ++c) {
    transmittance += visual_weights[c] * 2.0 * (*film)[c] / ((*first)[c] + (*second)[c]);
  }
  return -std::log10(transmittance);
}

}  // namespace

std::optional<double> base_fog_error_between_holes(const filmsim::Simulated& simulated) {
  const filmsim::Scenario& scenario = simulated.scenario;
  constexpr double unclipped_share = 0.005;  // noise alone puts fewer codes at the top
  if (simulated.truth.expected_fitness != "fit" ||
      simulated.truth.zero_clipped_share > unclipped_share ||
      scenario.encoding.file == filmsim::FileKind::kJpeg) {
    return std::nullopt;
  }
  constexpr double pitch_mm = 4.75;       // ISO 1007
  constexpr double same_pitch = 0.1;      // share: shrinkage and perspective stay well below
  constexpr std::size_t fewest_gaps = 4;  // for a median that a speck of dust doesn't move
  std::vector<double> densities;
  std::vector<double> true_densities;
  for (const filmsim::StripTruth& strip : simulated.truth.strips) {
    true_densities.push_back(strip.base_fog.visual);
    for (std::size_t i = 1; i < strip.holes_px.size(); ++i) {
      const filmsim::Point a = strip.holes_px[i - 1];
      const filmsim::Point b = strip.holes_px[i];
      const double pitches = std::hypot(b.x - a.x, b.y - a.y) / scenario.pixels_per_mm / pitch_mm;
      const auto density =
          std::abs(pitches - 1.0) < same_pitch ? density_between(simulated, a, b) : std::nullopt;
      if (density) {
        densities.push_back(*density);
      }
    }
  }
  if (densities.size() < fewest_gaps) {
    return std::nullopt;
  }
  return percentile(densities, 0.5) - percentile(true_densities, 0.5);
}

std::optional<double> base_fog_limit_error(filmsim::Scenario scenario) {
  scenario.scanner.glare.share = 0.0;
  scenario.scanner.black_offset = 0.0;
  return base_fog_error_between_holes(filmsim::render(std::move(scenario)));
}

}  // namespace bench
