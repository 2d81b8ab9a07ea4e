#include <fogline/process/advice.h>

namespace fogline {

namespace {

using enum RescueStep;

constexpr std::array<FactRow<RescueStep>, 22> rows{{
    {scan_again, "scan-again"},
    {nothing_chromogenic, "nothing-chromogenic"},
    {look_for_haze, "look-for-haze"},
    {doubt_tint, "doubt-tint"},
    {fix_milky, "fix-milky"},
    {fix_for_dye, "fix-for-dye"},
    {wash_out_dye, "wash-out-dye"},
    {clear_stain, "clear-stain"},
    {blow_off_dust, "blow-off-dust"},
    {wipe_drying_marks, "wipe-drying-marks"},
    {soak_out_rings, "soak-out-rings"},
    {fade_dye, "fade-dye"},
    {handle_with_care, "handle-with-care"},
    {nothing_needed, "nothing-needed"},
    {not_developed, "not-developed"},
    {not_exposed, "not-exposed"},
    {retouch, "retouch"},
    {keep_stain_of_silver, "keep-stain-of-silver"},
    {leave_silver, "leave-silver"},
    {print_on, "print-on", {"log_exposure_range"}},
    {print_on_by_condenser, "print-on-by-condenser", {"log_exposure_range"}},
    {told, "told"},
}};
static_assert(rows_in_order(rows));

}  // namespace

template <>
std::span<const FactRow<RescueStep>> fact_rows<RescueStep>() {
  return rows;
}

std::optional<Bath> bath_of(RescueStep step) {
  switch (step) {
    case fix_milky:
    case fix_for_dye:
      return Bath::fixer;
    case wash_out_dye:
      return Bath::sulfite;
    case clear_stain:
      return Bath::acid;
    case soak_out_rings:
      return Bath::water;
    default:
      return std::nullopt;
  }
}

}  // namespace fogline
