#include <fogline/process/advice.h>

namespace fogline {

namespace {

using enum BathReason;

constexpr std::array<FactRow<BathReason>, 26> rows{{
    {own_process, "own-process"},
    {stop_longest, "stop-longest", {"longest_s"}},
    {stop_enough, "stop-enough", {"enough_s", "longest_s"}},
    {stop_water, "stop-water"},
    {stop_gas, "stop-gas"},
    {clears_slowly, "clears-slowly", {"clearing_over_fresh", "spent_at"}},
    {takes_too_much_silver, "takes-too-much-silver", {"units", "units_per_litre", "tabular_units"}},
    {looks_milky, "looks-milky"},
    {dye_left, "dye-left"},
    {fixes_too_long, "fixes-too-long", {"time_s"}},
    {make_up_fresh, "make-up-fresh"},
    {clearing_time_cubic, "clearing-time-cubic", {"times", "clearing_s"}},
    {clearing_time_tabular, "clearing-time-tabular", {"times", "clearing_s"}},
    {fixer_kind_untold,
     "fixer-kind-untold",
     {"rapid_cubic_s", "rapid_tabular_s", "plain_cubic_s", "plain_tabular_s"}},
    {rapid_fixer, "rapid-fixer", {"cubic_s", "tabular_s"}},
    {plain_fixer, "plain-fixer", {"cubic_s", "tabular_s"}},
    {rapid_fixer_type_untold, "rapid-fixer-type-untold", {"cubic_s", "tabular_s"}},
    {plain_fixer_type_untold, "plain-fixer-type-untold", {"cubic_s", "tabular_s"}},
    {measure_clearing, "measure-clearing"},
    {running_water, "running-water", {"time_s"}},
    {wash_fills, "wash-fills", {"rest_s"}},
    {hardened_film, "hardened-film"},
    {fill_for_dye, "fill-for-dye"},
    {unseen_by_scan, "unseen-by-scan"},
    {handle_with_care, "handle-with-care"},
    {told, "told"},
}};
static_assert(rows_in_order(rows));

}  // namespace

template <>
std::span<const FactRow<BathReason>> fact_rows<BathReason>() {
  return rows;
}

}  // namespace fogline
