#pragma once

#include "density/density_strip.h"
#include "film/film_layout.h"

#include <fogline/sensitometry/film_tones.h>

#include <optional>
#include <vector>

namespace fogline {

/// A patch of film that should be unexposed, and where it lies.
struct ClearPatch {
  FilmExtent area;
  BaseFogSource source = BaseFogSource::rebate;
};

/// Places of a strip where no light fell if all went well: between and beside the perforations,
/// between the frames, beside the frames of film without perforations, and blank frames. Clear of
/// holes by 0.5 mm and of frames by 0.4 mm (stray light, halation, surge).
std::vector<ClearPatch> clear_patches(const FilmStrip& film);

/// What the clear patches of a strip read.
struct ClearFilm {
  PerChannel<double> density{};
  double visual = 0.0;
  /// Scatter between patches, density.
  double scatter = 0.0;
  BaseFogSource source = BaseFogSource::rebate;
  double area_mm2 = 0.0;
  /// The patches that counted; printed, fogged and dirty ones are left out.
  std::vector<ClearPatch> used;
};

/// Share of patches that is clear even on a dirty strip with its rebate in sight, and where a
/// holder shows no more than rims.
inline constexpr double clear_share_of_rebate = 0.3;
inline constexpr double clear_share_of_rims = 0.08;

/// Base plus fog of a strip: the median of its clear patches' own medians, those left out that are
/// off the `clear_share` percentile by more than 0.03 (edge print, fog, dirt, surge, a holder's
/// shadow). Nothing where no patch is in sight.
std::optional<ClearFilm> read_clear_film(const DensityStrip& density,
                                         const std::vector<ClearPatch>& patches,
                                         double clear_share = clear_share_of_rebate);

}  // namespace fogline
