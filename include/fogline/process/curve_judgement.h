#pragma once

#include <fogline/base/known.h>
#include <fogline/process/aim.h>
#include <fogline/roll/roll_measurement.h>

#include <optional>

namespace fogline {

enum class DevelopmentKind { normal, expanded, contracted };

/// What a roll's curve means for development, paper and scanning.
struct CurveJudgement {
  DevelopmentKind development = DevelopmentKind::normal;
  /// By how many zones: N+1 gives a subject of six zones the density range of one of seven (Adams,
  /// *The Negative*, 1981; from memory), so that contrast over the aim is 7 / (7 - zones). Within
  /// the aim's tolerance development is called normal.
  Known<Quantity> zones;
  /// Log exposure range that Zone I to Zone VIII ask of the paper in diffusion light, and in a
  /// condenser enlarger, whose partly directed light sees silver 1.15 to 1.3 times as dense (common
  /// practice, no source).
  Known<Quantity> diffusion_range;
  Known<Quantity> condenser_range;
  /// Net density of Zone IX, and whether scanners see through it: net densities up
  /// to about 2.0 cost few tenths to stray light (common practice, no source).
  Known<Quantity> densest;
  Known<bool> suits_scanning;

  friend bool operator==(const CurveJudgement&, const CurveJudgement&) = default;
};

/// How much denser the partly directed light of a condenser enlarger sees silver: the middle
/// of 1.15 to 1.3 (common practice, no source).
inline constexpr double condenser_factor = 1.22;

/// Nothing where the roll has no curve.
std::optional<CurveJudgement> judge_curve(const RollMeasurement& roll, const Aim& aim);

/// ISO range number of a paper: 100 times the log range, to the nearest ten (ISO 6846; from
/// memory).
int iso_range(double log_exposure_range);

}  // namespace fogline
