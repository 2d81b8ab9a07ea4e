#include "process/belief/cause_regions.h"

#include "process/belief/normal_grid.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

constexpr double log10_of_a_stop = 0.30103;

}  // namespace

double CauseRegions::exposure_threshold_stops(double contrast_index) const {
  const double off = std::abs(contrast_index - aim_.contrast_index);
  if (off <= aim_.tolerance) {
    return population_.exposure_latitude_stops;
  }
  const double stops_per_share =
      population_.middle_density / (population_.usual_contrast_index * log10_of_a_stop);
  return std::max(population_.exposure_latitude_stops, stops_per_share * off / aim_.contrast_index);
}

CauseProbabilities CauseRegions::causes(double contrast_index, double mean_stops,
                                        double sd_stops) const {
  const double threshold = exposure_threshold_stops(contrast_index);
  CauseProbabilities causes;
  causes.under_exposed = normal_share_below((-threshold - mean_stops) / sd_stops);
  causes.over_exposed = normal_share_below((mean_stops - threshold) / sd_stops);
  const double rest = std::max(0.0, 1.0 - causes.under_exposed - causes.over_exposed);
  const double off = contrast_index - aim_.contrast_index;
  if (std::abs(off) <= aim_.tolerance) {
    causes.normal = rest;
  } else if (off < 0.0) {
    causes.under_developed = rest;
  } else {
    causes.over_developed = rest;
  }
  return causes;
}

void add_causes(CauseProbabilities& sum, const CauseProbabilities& more, double weight) {
  sum.normal += weight * more.normal;
  sum.under_exposed += weight * more.under_exposed;
  sum.over_exposed += weight * more.over_exposed;
  sum.under_developed += weight * more.under_developed;
  sum.over_developed += weight * more.over_developed;
}

}  // namespace fogline
