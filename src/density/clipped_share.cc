#include "density/clipped_share.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// What a grid pixel counts whose bit says "some of its stored pixels", when more than one lies
/// below: more than one, less than half.
constexpr double some_share = 0.25;
/// With so many samples at exactly the scan's highest light the area is clipped below full scale.
constexpr double at_top_share = 0.5;

}  // namespace

ClippedShare::ClippedShare(const ScanGrid& grid) : grid_(grid) {
  const Raster<std::uint16_t>& roots = grid.light.root_codes();
  const auto channels = static_cast<std::size_t>(roots.channels());
  for (std::size_t i = 0; i < roots.samples().size(); ++i) {
    std::uint16_t& top = highest_roots_[i % channels];
    top = std::max(top, roots.samples()[i]);
  }
}

PerChannel<double> ClippedShare::of(const FilmMap& map, const FilmExtent& area) const {
  PerChannel<double> clipped{};
  PerChannel<double> at_top{};
  int count = 0;
  const double step_mm = grid_.reduction / map.pixels_per_mm();
  for (double s = area.along_begin_mm; s < area.along_end_mm; s += step_mm) {
    for (double t = area.across_begin_mm; t < area.across_end_mm; t += step_mm) {
      const PointPx at = map.scan_from_film({s, t});
      const int x = static_cast<int>(std::floor(at.x / grid_.reduction));
      const int y = static_cast<int>(std::floor(at.y / grid_.reduction));
      if (!grid_.clipped.contains(x, y)) {
        continue;
      }
      ++count;
      const std::uint8_t bits = grid_.clipped.at(x, y);
      for (int c = 0; c < grid_.light.channels(); ++c) {
        const auto i = static_cast<std::size_t>(c);
        const bool most = (bits >> (c + 4) & 1) != 0;
        const bool some = (bits >> c & 1) != 0;
        clipped[i] += most ? 1.0 : some ? some_share : 0.0;
        at_top[i] += grid_.light.root_codes().at(x, y, c) == highest_roots_[i] ? 1.0 : 0.0;
      }
    }
  }
  for (std::size_t c = 0; count > 0 && c < clipped.size(); ++c) {
    clipped[c] /= count;
    if (at_top[c] / count > at_top_share) {
      clipped[c] = 1.0;
    }
  }
  return clipped;
}

}  // namespace fogline
