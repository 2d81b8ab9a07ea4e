#pragma once

#include <fogline/process/roll_card.h>

#include <optional>
#include <string>

namespace fogline {

/// The contrast that the person develops for.
struct Aim {
  double contrast_index = 0.58;
  /// Nothing within this of the aim is called wrong (half a paper grade; common practice, no
  /// source).
  double tolerance = 0.05;
  /// Where the aim comes from, for the reader: "the usual aim for diffusion light", "your card".
  std::string source;
};

/// The aim: `wanted` (an option) before the card's own, before the usual one for the use on the
/// card, before that for diffusion light: 0.58 for diffusion light and scanning, 0.45 for condenser
/// light (paper range over subject range, as in Stroebel et al., *Basic Photographic Materials and
/// Processes*; values from memory). A roll that the card wants to be like isn't looked up here: the
/// usual aim then stands for it, and the source says so. `card` may be nullptr.
Aim aim_for(const RollCard* card, std::optional<double> wanted);

}  // namespace fogline
