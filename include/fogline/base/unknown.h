#pragma once

#include <fogline/base/fact.h>

namespace fogline {

/// Why a value isn't known. Grouped by the stage that says so.
enum class Unknown {
  not_told,  ///< what is known of this roll doesn't tell

  // process
  no_density_scan,     ///< no scan tells densities
  no_clear_film,       ///< pictures are there, clear film to count from isn't
  no_picture,          ///< nothing to judge light and development by
  unusual_roll,        ///< shadows and highlights fit no roll of the population
  nothing_metered,     ///< exposures are known from each other only
  no_curve_contrast,   ///< the curve tells no contrast index
  own_process,         ///< chromogenic film has a time of its own
  film_not_developed,  ///< no time mends that
  developer_weak,      ///< what time would do in it can't be told
  contrast_untold,     ///< this roll's
  film_not_exposed,    ///< no exposure mends that
  exposure_untold,     ///< this roll's
};

template <>
std::span<const FactRow<Unknown>> fact_rows<Unknown>();

}  // namespace fogline
