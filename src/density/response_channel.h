#pragma once

#include "density/fit_response.h"
#include "numerics/smooth_curve.h"

#include <vector>

namespace fogline {

/// The lights that a fit may use, with their stray light for one share of it.
class ResponsePoints {
 public:
  ResponsePoints(const ResponseProblem& problem, double stray_share);

  /// Log code over log light (transmitted plus stray, bare light's transmission 1), brightest
  /// first; `lights` names whose points they are, -1 the bare light.
  [[nodiscard]] std::vector<CurvePoint> of_channel(int channel) const;
  [[nodiscard]] const std::vector<int>& lights() const { return lights_; }
  /// Log light of density 0 in a channel, where the bare light lies.
  [[nodiscard]] double bare_log_light(int channel) const;

 private:
  const ResponseProblem& problem_;
  double stray_share_;
  std::vector<int> lights_;
};

/// One channel's fitted response.
struct ChannelResponse {
  CodeCurve curve;
  /// Log light that the curve calls 1: that of the full code.
  double full_log_light = 0.0;
  /// Log light, falling, with the doubt of each place's distance from the bare light, as a density
  /// before stray light is taken off.
  std::vector<double> log_light;
  std::vector<double> doubt;
  /// The lowest log light to which codes still fall.
  double lowest_log_light = 0.0;
};

/// Fits one channel. Empty curve where codes don't fall with light at all.
ChannelResponse fit_channel(const std::vector<CurvePoint>& points, double bare_log_light);

}  // namespace fogline
