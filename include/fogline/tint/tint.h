#pragma once

#include <fogline/base/known.h>
#include <fogline/base/quantity.h>

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
  image_stain    ///< grows with silver
};

/// One thing that colours the film. `density` is in the most absorbing channel, over what a clean
/// base has; for fixer_haze in unexposed film; for image_stain blue density gained at a silver
/// density of 1.
struct TintComponent {
  TintKind kind = TintKind::none;
  Quantity density;
  /// A probability that holds, 0 to 1.
  double confidence = 0.0;

  friend bool operator==(const TintComponent&, const TintComponent&) = default;
};

/// The colour of clear film against the bare light, so that the lamp's colour cancels.
struct Tint {
  Known<TintKind> kind;
  /// Absent where kind is unknown because the scan can't tell.
  Known<Quantity> density;
  double confidence = 0.0;
  /// All kinds found, strongest first; kind is the first. Empty where none was.
  std::vector<TintComponent> components;
  /// Least density of a tint that this scan would show.
  Known<double> detection_limit;
  /// What a clean base of this stock looks like isn't known: the tint may be its own.
  bool may_be_stock = true;

  friend bool operator==(const Tint&, const Tint&) = default;
};

}  // namespace fogline
