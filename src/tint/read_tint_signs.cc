#include "tint/clear_colour.h"
#include "tint/judge_tint.h"
#include "tint/picture_slope.h"

#include <algorithm>
#include <cmath>

namespace fogline {

std::optional<TintSigns> read_tint_signs(const DensityStrip& density,
                                         const std::vector<FilmExtent>& clear,
                                         const std::vector<FilmExtent>& pictures) {
  const std::optional<ClearColour> colour = read_clear_colour(density, clear);
  if (!colour) {
    return std::nullopt;
  }
  TintSigns signs;
  signs.clear = colour->density;
  signs.channel_scatter = colour->channel_scatter;
  signs.area_mm2 = colour->area_mm2;
  const ClearTexture texture = read_clear_texture(density, clear);
  signs.texture = std::sqrt(std::max(0.0, texture.variance - texture.noise_variance));
  signs.texture_noise = std::sqrt(texture.noise_variance);
  signs.texture_spots = texture.spots;
  if (const auto slope = read_picture_slope(density, pictures, colour->density[0])) {
    signs.slope = slope->slope;
    signs.slope_doubt = slope->doubt;
    signs.slope_low = slope->low;
    signs.slope_high = slope->high;
  }
  return signs;
}

}  // namespace fogline
