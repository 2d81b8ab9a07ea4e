#pragma once

#include <fogline/base/fact.h>
#include <fogline/base/known.h>
#include <fogline/base/quantity.h>
#include <fogline/process/finding.h>
#include <fogline/process/roll_card.h>
#include <fogline/roll/roll_measurement.h>

#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// Where an aim comes from: the usual one for how the negatives are used, or a person.
enum class AimSource { diffusion, condenser, scanning, card, option };

template <>
std::span<const FactRow<AimSource>> fact_rows<AimSource>();

/// The contrast that the person develops for.
struct Aim {
  double contrast_index = 0.58;
  /// Nothing within this of the aim is called wrong (half a paper grade; common practice, no
  /// source).
  double tolerance = 0.05;
  AimSource source = AimSource::diffusion;
  /// The roll that the card wants to be like, whose contrast isn't known here.
  std::optional<std::string> unknown_like;

  friend bool operator==(const Aim&, const Aim&) = default;
};

/// The aim: `wanted` (an option) before the card's own, before the usual one for the use on the
/// card, before that for diffusion light: 0.58 for diffusion light and scanning, 0.45 for condenser
/// light (paper range over subject range, as in Stroebel et al., *Basic Photographic Materials and
/// Processes*; values from memory). A roll that the card wants to be like isn't looked up here: the
/// usual aim then stands for it, and `unknown_like` says so. `card` may be nullptr.
Aim aim_for(const RollCard* card, std::optional<double> wanted);

/// Light or time: how likely each is the main cause of how the roll looks. The five exclude one
/// another and sum to 1 where the roll was judged.
///
/// Exposure counts beyond the population's latitude, development beyond the aim's tolerance. Where
/// neither counts the roll is normal; where both do, the main cause is the one that moves the net
/// density of the middle tone further: 20 % of contrast weigh as much as 0.8 stop.
struct CauseProbabilities {
  double normal = 0.0;
  double under_exposed = 0.0;
  double over_exposed = 0.0;
  double under_developed = 0.0;
  double over_developed = 0.0;

  friend bool operator==(const CauseProbabilities&, const CauseProbabilities&) = default;
};

/// What a roll's densities say of exposure and development, prior knowledge of rolls included.
struct LightOrTime {
  /// Where exposure wasn't judged, the causes are of development alone.
  Known<CauseProbabilities> causes;
  /// Light received over what the usual placement would give, stops (positive: more), u95.
  Known<Quantity> exposure_stops;
  /// Light within this of the usual placement isn't called wrong, stops.
  double latitude_stops = 0.0;
  /// Contrast index of this roll as believed after looking (posterior mean), u95.
  Known<Quantity> contrast_index;
  /// What was seen: shadows, highlights, edge print, leader, base plus fog.
  std::vector<Fact<Evidence>> evidence;
  /// The one further measurement that would tell most; absent where nothing is open.
  std::optional<FurtherMeasurement> would_tell_most;

  /// Whether anything is said of light and time.
  [[nodiscard]] bool judged() const { return causes.has_value(); }

  friend bool operator==(const LightOrTime&, const LightOrTime&) = default;
};

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
