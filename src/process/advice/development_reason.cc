#include <fogline/process/advice.h>

namespace fogline {

namespace {

using enum DevelopmentReason;

constexpr std::array<FactRow<DevelopmentReason>, 25> rows{{
    {contrast_seen, "contrast-seen", {"contrast_index", "lower95", "upper95", "aim"}},
    {within_tolerance, "within-tolerance", {"tolerance"}},
    {too_little_known, "too-little-known"},
    {light_first, "light-first"},
    {time_lands, "time-lands", {"time_s", "tolerance", "chance", "old_chance"}},
    {more_time_lands, "more-time-lands", {"change_share", "tolerance", "chance", "old_chance"}},
    {less_time_lands, "less-time-lands", {"change_share", "tolerance", "chance", "old_chance"}},
    {time_lands_at, "time-lands-at", {"time_s", "temperature_c", "tolerance", "chance"}},
    {more_time_lands_at,
     "more-time-lands-at",
     {"change_share", "temperature_c", "tolerance", "chance"}},
    {less_time_lands_at,
     "less-time-lands-at",
     {"change_share", "temperature_c", "tolerance", "chance"}},
    {time_doubt, "time-doubt", {"time_u95_s"}},
    {time_doubt_untold, "time-doubt-untold"},
    {usual_growth, "usual-growth"},
    {usual_growth_type_untold, "usual-growth-type-untold"},
    {time_untold, "time-untold"},
    {temperature_untold, "temperature-untold"},
    {too_warm, "too-warm", {"temperature_c", "back_to_c"}},
    {short_when_warm, "short-when-warm", {"temperature_c", "back_to_c"}},
    {unusual_temperature, "unusual-temperature", {"temperature_c"}},
    {tank_changed, "tank-changed", {"change_c"}},
    {too_short, "too-short"},
    {far_from_tried, "far-from-tried"},
    {out_of_reach, "out-of-reach", {"chance"}},
    {shared_tank, "shared-tank", {}, {"tank"}},
    {told, "told"},
}};
static_assert(rows_in_order(rows));

}  // namespace

template <>
std::span<const FactRow<DevelopmentReason>> fact_rows<DevelopmentReason>() {
  return rows;
}

}  // namespace fogline
