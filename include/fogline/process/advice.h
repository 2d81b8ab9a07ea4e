#pragma once

#include <fogline/base/known.h>
#include <fogline/base/quantity.h>
#include <fogline/process/advice_reasons.h>
#include <fogline/process/evidence.h>

#include <optional>
#include <vector>

namespace fogline {

/// The next roll's development.
struct DevelopmentAdvice {
  std::optional<double> time_s;
  std::optional<double> time_u95_s;
  std::optional<double> temperature_c;
  /// Change of time, positive: longer.
  std::optional<double> change_percent;
  /// Where nothing can be advised, why; nothing else is then told.
  Known<Quantity> predicted_contrast_index;
  std::vector<Fact<DevelopmentReason>> reasons;
  /// Where too little is known for a change: what would tell most.
  std::optional<FurtherMeasurement> would_tell_most;

  friend bool operator==(const DevelopmentAdvice&, const DevelopmentAdvice&) = default;
};

/// The next roll's exposure.
struct ExposureAdvice {
  /// Positive: give more light. Where nothing can be advised, why.
  Known<double> change_stops;
  std::optional<double> exposure_index;
  std::vector<Fact<ExposureReason>> reasons;

  friend bool operator==(const ExposureAdvice&, const ExposureAdvice&) = default;
};

enum class BathChange { keep, longer, shorter, renew, unknown };

/// One bath of the next roll.
struct BathAdvice {
  std::optional<double> time_s;
  BathChange change = BathChange::unknown;
  /// Wash by fills: inversions each.
  std::vector<int> fills;
  std::vector<Fact<BathReason>> reasons;

  friend bool operator==(const BathAdvice&, const BathAdvice&) = default;
};

/// What to change for the next roll, and what can still be done for this one.
struct Advice {
  DevelopmentAdvice development;
  ExposureAdvice exposure;
  BathAdvice stop;
  BathAdvice fix;
  BathAdvice wash;
  /// In the order that harms nothing.
  std::vector<Fact<RescueStep>> this_roll;

  friend bool operator==(const Advice&, const Advice&) = default;
};

}  // namespace fogline
