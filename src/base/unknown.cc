#include <fogline/base/unknown.h>

#include <array>

namespace fogline {

namespace {

constexpr std::array<FactRow<Unknown>, 13> rows{{
    {Unknown::not_told, "not-told"},

    // process
    {Unknown::no_density_scan, "no-density-scan"},
    {Unknown::no_clear_film, "no-clear-film"},
    {Unknown::no_picture, "no-picture"},
    {Unknown::unusual_roll, "unusual-roll"},
    {Unknown::nothing_metered, "nothing-metered"},
    {Unknown::no_curve_contrast, "no-curve-contrast"},
    {Unknown::own_process, "own-process"},
    {Unknown::film_not_developed, "film-not-developed"},
    {Unknown::developer_weak, "developer-weak"},
    {Unknown::contrast_untold, "contrast-untold"},
    {Unknown::film_not_exposed, "film-not-exposed"},
    {Unknown::exposure_untold, "exposure-untold"},
}};
static_assert(rows_in_order(rows));

}  // namespace

template <>
std::span<const FactRow<Unknown>> fact_rows<Unknown>() {
  return rows;
}

}  // namespace fogline
