#pragma once

#include <fogline/base/channels.h>

#include <vector>

namespace fogline {

/// How one channel of a scanner turns light into codes, as a calibration found it: rising pairs of
/// code (share of the format's full code, above 0 to 1) and linear light (full code is light 1).
/// Between the points the logarithm of light is straight over the logarithm of code, and so it goes
/// on beyond them; points therefore stand close.
struct CodeCurve {
  std::vector<double> code;
  std::vector<double> light;

  /// Linear light of a code; 0 at code 0 and below. Needs at least two points.
  [[nodiscard]] double light_of(double code_share) const;
  /// The code of a light, the other way round.
  [[nodiscard]] double code_of(double linear_light) const;
};

/// The curves of a scanner's channels: one (grey) or three.
struct CodeCurves {
  int channels = 1;
  PerChannel<CodeCurve> of_channel;
};

}  // namespace fogline
