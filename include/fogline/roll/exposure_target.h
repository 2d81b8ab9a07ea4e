#pragma once

#include <fogline/base/raster.h>
#include <fogline/density/scanner_calibration.h>

#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// Frames of an even, evenly lit target at known exposures.
struct BracketTarget {
  /// Exposures from the metered one, in the order in which they were made.
  std::vector<double> stops;
  /// Standard uncertainty of each alone, stops, as many as exposures.
  std::vector<double> doubt_stops;
  /// Number of the roll's frame that begins it, where the card tells.
  std::optional<int> first_frame;
};

/// A wedge that was laid on the film and exposed through.
struct ExposedWedgeTarget {
  WedgeReference reference;
  /// Exposure in lux seconds without the wedge.
  std::optional<double> h_at_zero_lux_s;
};

/// An area that the user marked, and the exposure it got.
struct MarkedArea {
  BoxPx box_px;
  double stops = 0.0;
};

enum class TonePart { shadow, middle, highlight };

/// A tone of a picture that was metered: what the frame's darkest, middle or brightest part was
/// placed on.
struct MeteredTone {
  int frame = 0;
  TonePart part = TonePart::shadow;
  double zone = 0.0;
  /// Standard uncertainty, stops.
  double doubt_stops = 0.5;

  friend bool operator==(const MeteredTone&, const MeteredTone&) = default;
};

/// What is known of exposures on a roll.
struct ExposureTarget {
  std::optional<BracketTarget> bracket;
  std::optional<ExposedWedgeTarget> wedge;
  std::vector<MarkedArea> areas;
  /// Standard uncertainty of each marked area's exposure, stops.
  double area_doubt_stops = 0.0;
  std::vector<MeteredTone> metered;
  /// That the meter was set to.
  std::optional<double> exposure_index;

  [[nodiscard]] bool empty() const {
    return !bracket && !wedge && areas.empty() && metered.empty();
  }
};

}  // namespace fogline
