#pragma once

#include <fogline/base/quantity.h>

#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// The next roll's development.
struct DevelopmentAdvice {
  std::optional<double> time_s;
  std::optional<double> time_u95_s;
  std::optional<double> temperature_c;
  /// Change of time, positive: longer.
  std::optional<double> change_percent;
  std::optional<Quantity> predicted_contrast_index;
  std::vector<std::string> reasons;
};

/// The next roll's exposure.
struct ExposureAdvice {
  /// Positive: give more light.
  std::optional<double> change_stops;
  std::optional<double> exposure_index;
  std::vector<std::string> reasons;
};

enum class BathChange { keep, longer, shorter, renew, unknown };

/// One bath of the next roll.
struct BathAdvice {
  std::optional<double> time_s;
  BathChange change = BathChange::unknown;
  /// Wash by fills: inversions each.
  std::vector<int> fills;
  std::vector<std::string> reasons;
};

/// What to change for the next roll, and what can still be done for this one.
struct Advice {
  DevelopmentAdvice development;
  ExposureAdvice exposure;
  BathAdvice stop;
  BathAdvice fix;
  BathAdvice wash;
  /// In the order that harms nothing.
  std::vector<std::string> this_roll;
};

}  // namespace fogline
