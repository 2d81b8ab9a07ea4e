#pragma once

#include <fogline/base/quantity.h>

#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// What may colour clear film. Three broad bands can't tell one dye from another, so colour alone
/// speaks of `dye_left`; which dye, only place or the film's history says.
enum class TintKind {
  none,
  dye_left,
  sensitising_dye,
  antihalation_dye,
  fixer_haze,    ///< milky: scatters, blue most, with texture
  yellow_stain,  ///< even, blue most
  image_stain,   ///< grows with silver
  unknown
};

/// One thing that colours the film. `density` is in the most absorbing channel, over what a clean
/// base has; for fixer_haze in unexposed film; for image_stain blue density gained at a silver
/// density of 1.
struct TintComponent {
  TintKind kind = TintKind::unknown;
  Quantity density;
  /// A probability that holds, 0 to 1.
  double confidence = 0.0;
};

/// The colour of clear film against the bare light, so that the lamp's colour cancels.
struct Tint {
  TintKind kind = TintKind::unknown;
  /// Absent where kind is unknown because the scan can't tell.
  std::optional<Quantity> density;
  double confidence = 0.0;
  /// All kinds found, strongest first; kind is the first. Empty where none was.
  std::vector<TintComponent> components;
  /// Least density of a tint that this scan would show.
  std::optional<double> detection_limit;
  /// What a clean base of this stock looks like isn't known: the tint may be its own.
  bool may_be_stock = true;
  /// Why kind is unknown; empty otherwise.
  std::string reason;
};

}  // namespace fogline
