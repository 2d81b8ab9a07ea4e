#pragma once

#include <fogline/base/channels.h>
#include <fogline/base/quantity.h>

#include <optional>

namespace fogline {

/// Where base plus fog was read.
enum class BaseFogSource { rebate, between_frames, unexposed_frame, marked_area, lowest_density };

/// Density of unexposed, processed film above the bare light path, leftover dye and haze included,
/// in the scanner's own bands.
struct BaseFog {
  Quantity visual;
  /// Red, green, blue; absent in a grey scan.
  std::optional<PerChannel<Quantity>> channels;
  BaseFogSource source = BaseFogSource::rebate;
  std::optional<double> area_mm2;

  friend bool operator==(const BaseFog&, const BaseFog&) = default;
};

}  // namespace fogline
