#include "tint/clear_colour.h"

#include "numerics/robust.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace fogline {

namespace {

constexpr int red = 0;
constexpr int green = 1;
constexpr int blue = 2;

/// Side of the spots that texture is read between, mm: the patches of milky film are a few
/// millimetres wide (common practice, no source), and a bridge between two holes is about as wide.
constexpr double texture_spot_mm = 2.0;
/// Fewest pixels of 0.1 mm in a patch, and in a quarter of a spot.
constexpr std::size_t fewest_pixels = 4;
/// Neighbouring patches share what is uneven: lamp, haze. Half of them count as independent.
constexpr double independent_share = 0.5;
/// Standard error of a median over that of a mean, normal scatter: sqrt(pi / 2).
constexpr double median_penalty = 1.2533;
/// Scatter of one patch alone, which tells none: grain cancels, so noise rules.
constexpr double single_patch_scatter = 0.003;

struct PixelBox {
  int x0 = 0;
  int x1 = 0;
  int y0 = 0;
  int y1 = 0;
};

PixelBox box_of(const DensityStrip& density, const FilmExtent& area) {
  return {density.column(area.along_begin_mm), density.column(area.along_end_mm),
          density.row(area.across_begin_mm), density.row(area.across_end_mm)};
}

/// Differences channel - red of all pixels of a box that can be read; of red itself the density.
std::vector<double> values_in(const DensityStrip& density, const PixelBox& box, int channel) {
  std::vector<double> values;
  for (int y = box.y0; y <= box.y1; ++y) {
    for (int x = box.x0; x <= box.x1; ++x) {
      const float base = density.channels.at(x, y, red);
      const float value = density.channels.at(x, y, channel);
      if (std::isfinite(base) && std::isfinite(value)) {
        values.push_back(static_cast<double>(channel == red ? value : value - base));
      }
    }
  }
  return values;
}

struct SpotReading {
  double value = 0.0;
  double noise_variance = 0.0;
};

/// A spot's (blue - red) and the noise of its mean, by the scatter of its four quarters: pixels
/// next to each other share noise, quarters hardly do.
std::optional<SpotReading> read_spot(const DensityStrip& density, const PixelBox& box) {
  const int middle_x = (box.x0 + box.x1) / 2;
  const int middle_y = (box.y0 + box.y1) / 2;
  const std::array<PixelBox, 4> quarters{PixelBox{box.x0, middle_x, box.y0, middle_y},
                                         PixelBox{middle_x + 1, box.x1, box.y0, middle_y},
                                         PixelBox{box.x0, middle_x, middle_y + 1, box.y1},
                                         PixelBox{middle_x + 1, box.x1, middle_y + 1, box.y1}};
  std::array<double, 4> means{};
  double sum = 0.0;
  for (std::size_t q = 0; q < quarters.size(); ++q) {
    const std::vector<double> values = values_in(density, quarters[q], blue);
    if (values.size() < fewest_pixels) {
      return std::nullopt;
    }
    means[q] = median(values);
    sum += means[q];
  }
  SpotReading spot;
  constexpr double count = 4.0;
  spot.value = sum / count;
  for (const double mean : means) {
    spot.noise_variance += (mean - spot.value) * (mean - spot.value) / (count * (count - 1.0));
  }
  return spot;
}

}  // namespace

std::optional<ClearColour> read_clear_colour(const DensityStrip& density,
                                             const std::vector<FilmExtent>& patches) {
  if (density.channels.channels() != most_channels) {
    return std::nullopt;
  }
  PerChannel<std::vector<double>> readings;
  ClearColour colour;
  for (const FilmExtent& patch : patches) {
    const PixelBox box = box_of(density, patch);
    const std::vector<double> base = values_in(density, box, red);
    if (base.size() < fewest_pixels) {
      continue;
    }
    readings[red].push_back(median(base));
    readings[green].push_back(median(values_in(density, box, green)));
    readings[blue].push_back(median(values_in(density, box, blue)));
    colour.area_mm2 +=
        (patch.along_end_mm - patch.along_begin_mm) * (patch.across_end_mm - patch.across_begin_mm);
  }
  if (readings[red].empty()) {
    return std::nullopt;
  }
  colour.density[red] = median(readings[red]);
  const double count = independent_share * static_cast<double>(readings[red].size());
  double scatter = readings[red].size() > 1 ? 0.0 : single_patch_scatter;
  for (const int channel : {green, blue}) {
    const auto c = static_cast<std::size_t>(channel);
    const LocationScale spread = robust_location(readings[c]);
    colour.density[c] = colour.density[red] + spread.location;
    scatter = std::max(scatter, spread.scale);
  }
  colour.channel_scatter = median_penalty * scatter / std::sqrt(std::max(1.0, count));
  return colour;
}

ClearTexture read_clear_texture(const DensityStrip& density,
                                const std::vector<FilmExtent>& patches) {
  ClearTexture texture;
  if (density.channels.channels() != most_channels) {
    return texture;
  }
  std::vector<double> values;
  std::vector<double> noise;
  const int side = std::max(2, static_cast<int>(texture_spot_mm * density.pixels_per_mm));
  for (const FilmExtent& patch : patches) {
    const PixelBox box = box_of(density, patch);
    const int columns = std::max(1, (box.x1 - box.x0 + 1) / side);
    const int rows = std::max(1, (box.y1 - box.y0 + 1) / side);
    for (int r = 0; r < rows; ++r) {
      for (int c = 0; c < columns; ++c) {
        const int x = box.x0 + c * side;
        const int y = box.y0 + r * side;
        const auto spot = read_spot(
            density, {x, std::min(x + side - 1, box.x1), y, std::min(y + side - 1, box.y1)});
        if (spot) {
          values.push_back(spot->value);
          noise.push_back(spot->noise_variance);
        }
      }
    }
  }
  texture.spots = static_cast<int>(values.size());
  if (texture.spots > 1) {
    const double scale = robust_location(values).scale;
    texture.variance = scale * scale;
    // A median of three degrees of freedom: chi squared's median is 2.366 of its mean 3.
    constexpr double median_of_mean = 2.366 / 3.0;
    texture.noise_variance = median(noise) / median_of_mean;
  }
  return texture;
}

}  // namespace fogline
