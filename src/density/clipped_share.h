#pragma once

#include "film/film_layout.h"

#include <fogline/base/quantity.h>
#include <fogline/base/scan_source.h>

#include <cstdint>

namespace fogline {

/// Tells how much of an area had reached the top code of its scan, where light is no longer
/// measured.
class ClippedShare {
 public:
  explicit ClippedShare(const ScanGrid& grid);

  /// Share of the area's stored pixels at the top code, per channel, 0 to 1: the format's highest
  /// code, or the highest code that the scan holds where more than half of the area stands at
  /// exactly it (a scanner that stops short of full scale).
  [[nodiscard]] PerChannel<double> of(const FilmMap& map, const FilmExtent& area) const;

 private:
  const ScanGrid& grid_;
  PerChannel<std::uint16_t> highest_roots_{};
};

}  // namespace fogline
