#pragma once

#include <fogline/base/known.h>
#include <fogline/base/quantity.h>

namespace fogline {

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

}  // namespace fogline
