#include <fogline/process/finding.h>

namespace fogline {

namespace {

using enum FurtherMeasurement;

constexpr std::array<FactRow<FurtherMeasurement>, 5> rows{{
    {compare_frame_numbers, "compare-frame-numbers"},
    {scan_leader, "scan-leader"},
    {scan_more_strips, "scan-more-strips"},
    {calibrate_scanner, "calibrate-scanner"},
    {meter_walls, "meter-walls"},
}};
static_assert(rows_in_order(rows));

}  // namespace

template <>
std::span<const FactRow<FurtherMeasurement>> fact_rows<FurtherMeasurement>() {
  return rows;
}

}  // namespace fogline
