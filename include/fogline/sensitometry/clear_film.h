#pragma once

#include <fogline/density/density_strip.h>
#include <fogline/film/film_layout.h>
#include <fogline/sensitometry/base_fog.h>

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

/// Base plus fog of a strip: the median of its clear patches' own medians, those that are denser
/// than the clearest third by more than 0.03 left out (edge print, fog, dirt, surge). Nothing where
/// no patch is in sight.
std::optional<ClearFilm> read_clear_film(const DensityStrip& density,
                                         const std::vector<ClearPatch>& patches);

}  // namespace fogline
