#include <fogline/process/advice.h>

namespace fogline {

namespace {

using enum ExposureReason;

constexpr std::array<FactRow<ExposureReason>, 9> rows{{
    {got_more_light, "got-more-light", {"stops", "stops_u95"}},
    {got_less_light, "got-less-light", {"stops", "stops_u95"}},
    {no_error_worth_correcting, "no-error-worth-correcting"},
    {time_first, "time-first"},
    {give_more_light, "give-more-light", {"stops"}},
    {give_less_light, "give-less-light", {"stops"}},
    {gross_error, "gross-error"},
    {set_index, "set-index", {"exposure_index", "exposure_index_before"}},
    {told, "told"},
}};
static_assert(rows_in_order(rows));

}  // namespace

template <>
std::span<const FactRow<ExposureReason>> fact_rows<ExposureReason>() {
  return rows;
}

}  // namespace fogline
