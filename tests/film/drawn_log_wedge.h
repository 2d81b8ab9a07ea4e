// A drawn wedge on the logarithm of light, as the search for wedges sees it, and what is known of
// it beforehand: its steps as patches in a row.
#pragma once

#include "film/drawn_wedge.h"
#include "film/wedges/wedge_chains.h"

namespace fogline::drawn {

/// Density of every pixel's middle, held at the darkest that a scanner sees.
inline cv::Mat1f log_wedge(const Wedge& wedge, int width_px, int height_px, double darkest = 4.0) {
  cv::Mat1f image(height_px, width_px);
  for (int y = 0; y < height_px; ++y) {
    for (int x = 0; x < width_px; ++x) {
      image(y, x) = static_cast<float>(std::min(darkest, wedge_density(wedge, x + 0.5, y + 0.5)));
    }
  }
  return image;
}

/// The wedge's steps as patches, lightest first, each smaller than its step by what smoothing takes
/// (two pixels a side).
inline PatchChain chain_of(const Wedge& wedge) {
  constexpr double margin_px = 4.0;
  const bool vertical = std::abs(std::sin(wedge.direction_deg * std::numbers::pi / 180.0)) > 0.7;
  const double along = wedge.pitch_px - margin_px;
  const double across = wedge.size_px - margin_px;
  PatchChain chain;
  chain.vertical = vertical;
  for (int i = 0; i < wedge.steps; ++i) {
    chain.patches.push_back({step_middle(wedge, i), vertical ? across : along,
                             vertical ? along : across, wedge.density(i)});
  }
  return chain;
}

}  // namespace fogline::drawn
