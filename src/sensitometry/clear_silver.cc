#include "sensitometry/clear_silver.h"

#include "density/callier.h"

#include <algorithm>

namespace fogline {

namespace {

/// Standard deviations above the usual base from which an excess begins to count, and counts whole.
constexpr double begin_deviations = 2.75;
constexpr double whole_deviations = 4.0;

}  // namespace

ClearSilver silver_in_clear_film(double base_fog, FilmFormat format, const FilmKnowledge& films) {
  const bool clear_support = format == FilmFormat::f120 || format == FilmFormat::sheet;
  const UsualDensity& usual = clear_support ? films.clear_base : films.grey_base;
  const double deviations = (base_fog - usual.density) / usual.sd;
  const double counts =
      std::clamp((deviations - begin_deviations) / (whole_deviations - begin_deviations), 0.0, 1.0);
  const auto silver_over = [&](double base) {
    return usual_fog + counts * std::max(0.0, base_fog - base);
  };
  return {silver_over(usual.density), silver_over(films.clear_base.density)};
}

}  // namespace fogline
