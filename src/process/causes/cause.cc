#include <fogline/process/finding.h>

namespace fogline {

namespace {

constexpr std::array<FactRow<Cause>, 20> rows{{
    {Cause::normal, "normal"},
    {Cause::under_exposed, "under-exposed"},
    {Cause::over_exposed, "over-exposed"},
    {Cause::under_developed, "under-developed"},
    {Cause::over_developed, "over-developed"},
    {Cause::fogged, "fogged"},
    {Cause::dye_left, "dye-left"},
    {Cause::fixing_incomplete, "fixing-incomplete"},
    {Cause::stained, "stained"},
    {Cause::drying_marks, "drying-marks"},
    {Cause::air_bells, "air-bells"},
    {Cause::uneven_development, "uneven-development"},
    {Cause::dirty, "dirty"},
    {Cause::scratched, "scratched"},
    {Cause::light_struck, "light-struck"},
    {Cause::not_exposed, "not-exposed"},
    {Cause::not_developed, "not-developed"},
    {Cause::weak_developer, "weak-developer"},
    {Cause::drift, "drift"},
    {Cause::unfit_scan, "unfit-scan"},
}};
static_assert(rows_in_order(rows));

}  // namespace

template <>
std::span<const FactRow<Cause>> fact_rows<Cause>() {
  return rows;
}

}  // namespace fogline
