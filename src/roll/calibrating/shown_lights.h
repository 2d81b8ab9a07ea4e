#pragma once

#include "density/fit_response.h"
#include "film/wedges/find_wedges.h"

#include <fogline/base/quantity.h>
#include <fogline/base/scan_source.h>

#include <array>

namespace fogline {

/// An even area as read, whatever it shows.
struct EvenArea {
  std::array<PointPx, 4> corners_px{};
  PerChannel<double> light{};
  PerChannel<double> light_doubt{};
  PerChannel<double> clipped_share{};
};

/// The middle ninth of a picture, which a target or a layer fills: median light, its doubt from the
/// scatter of sixteen parts, share at the top code.
EvenArea middle_of(const ScanGrid& grid);

/// An area of known density in the scan's own codes. Clipped and lightless areas get a reason why
/// they can't be used.
ShownLight shown_light(const EvenArea& area, const ScanSource& source, double density,
                       double density_doubt);

}  // namespace fogline
