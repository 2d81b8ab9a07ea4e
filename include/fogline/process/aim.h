#pragma once

#include <fogline/base/fact.h>
#include <fogline/process/roll_card.h>

#include <optional>
#include <string>

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

}  // namespace fogline
