#pragma once

#include <fogline/base/known.h>

#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// One area of film that got a known exposure, and the density it reached.
struct ExposedStep {
  std::string label;
  /// Log exposure, on any scale that is common to all steps, and the standard uncertainty of this
  /// one alone (a shutter time, a filter).
  double log_h = 0.0;
  double log_h_doubt = 0.0;
  /// Density, base included, and the standard uncertainty of this one alone.
  double density = 0.0;
  double density_doubt = 0.0;
  /// Why the curve takes no notice of it; absent where it does.
  std::optional<WhyUnknown> left_out;

  friend bool operator==(const ExposedStep&, const ExposedStep&) = default;
};

/// A doubt that all steps share and that changes with density: stray light, a scanner's response.
/// Standard uncertainty at rising net densities, straight between them; all of one sign.
struct CommonDoubt {
  std::vector<double> net_density;
  std::vector<double> doubt;

  [[nodiscard]] double at(double net_density_there) const;

  friend bool operator==(const CommonDoubt&, const CommonDoubt&) = default;
};

/// Exposed steps, and what is known of all of them together.
struct ExposedSteps {
  std::vector<ExposedStep> steps;
  /// Base plus fog read elsewhere, and its standard uncertainty relative to the steps.
  std::optional<double> base_fog;
  double base_fog_doubt = 0.0;
  /// Standard uncertainties common to all steps. As shares: of every net density (the scanner's
  /// scale, the angle of light), and of every difference of log H (a nominal wedge's slope).
  double density_share_doubt = 0.0;
  std::vector<CommonDoubt> common_doubts;
  /// Net density beyond which the common doubts are too great for a slope.
  double net_limit = INFINITY;
  double log_h_share_doubt = 0.0;
};

}  // namespace fogline
