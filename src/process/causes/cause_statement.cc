#include <fogline/process/finding.h>

namespace fogline {

namespace {

using enum CauseStatement;

constexpr std::array<FactRow<CauseStatement>, 33> rows{{
    {light_and_development_right,
     "light-and-development-right",
     {"contrast_index", "contrast_index_u95", "aim"}},
    {development_right, "development-right", {"contrast_index", "contrast_index_u95", "aim"}},
    {light_short, "light-short", {"stops", "stops_u95"}},
    {light_plentiful, "light-plentiful", {"stops", "stops_u95"}},
    {development_short, "development-short", {"contrast_index", "contrast_index_u95", "aim"}},
    {development_long, "development-long", {"contrast_index", "contrast_index_u95", "aim"}},
    {perhaps_right, "perhaps-right", {"probability"}},
    {perhaps_too_little_light, "perhaps-too-little-light", {"probability"}},
    {perhaps_too_much_light, "perhaps-too-much-light", {"probability"}},
    {perhaps_too_little_development, "perhaps-too-little-development", {"probability"}},
    {perhaps_too_much_development, "perhaps-too-much-development", {"probability"}},
    {developer_weak, "developer-weak"},
    {perhaps_developer_weak, "perhaps-developer-weak"},
    {not_exposed, "not-exposed"},
    {perhaps_not_exposed, "perhaps-not-exposed"},
    {not_developed, "not-developed"},
    {perhaps_not_developed, "perhaps-not-developed"},
    {fogged, "fogged", {"excess_density"}},
    {perhaps_fogged, "perhaps-fogged"},
    {dye_left, "dye-left"},
    {looks_milky, "looks-milky"},
    {stained_yellow, "stained-yellow"},
    {stained_with_silver, "stained-with-silver"},
    {perhaps_stocks_own, "perhaps-stocks-own"},
    {drops_dried, "drops-dried"},
    {air_bells_clung, "air-bells-clung"},
    {dirt_lies, "dirt-lies"},
    {scratched, "scratched"},
    {light_struck, "light-struck"},
    {developed_unevenly, "developed-unevenly"},
    {no_scan_tells_density, "no-scan-tells-density"},
    {some_scans_tell_none, "some-scans-tell-none"},
    {told, "told"},
}};
static_assert(rows_in_order(rows));

}  // namespace

template <>
std::span<const FactRow<CauseStatement>> fact_rows<CauseStatement>() {
  return rows;
}

}  // namespace fogline
