#pragma once

#include <fogline/base/known.h>
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

/// Tone of one frame: 2nd, 50th and 98th percentile of visual density over the frame less 0.7 mm
/// along its border, averaged (in transmittance) over spots of 0.1 mm. Above the bare light path,
/// base included, or above base where the scan shows no bare light path.
struct FrameTone {
  Known<Quantity> shadow;
  Known<Quantity> middle;
  Known<Quantity> highlight;
  /// Highlight less shadow: what base, zero and tint share cancels in it.
  Known<Quantity> range;
  /// Log exposure range that the frame asks of the paper in diffuse light (ISO R / 100): a
  /// satisfying print needs paper whose range equals the negative's (ISO 6846, introduction).
  Known<double> paper_range;

  friend bool operator==(const FrameTone&, const FrameTone&) = default;
};

/// How contrast was read. Without a target it can only be estimated from what is known of scenes.
enum class ContrastMethod { wedge, bracket, marked_areas, scene_estimate, none };

/// Contrast of a roll.
struct ContrastEstimate {
  ContrastMethod method = ContrastMethod::none;
  Known<Quantity> contrast_index;
  Known<Quantity> density_range;

  friend bool operator==(const ContrastEstimate&, const ContrastEstimate&) = default;
};

}  // namespace fogline
