#include <fogline/base/caution.h>

#include <array>

namespace fogline {

namespace {

constexpr auto rows = std::to_array<FactRow<CautionKind>>({
    {CautionKind::resolution_tag_odd, "resolution-tag-odd"},
    {CautionKind::transfer_assumed, "transfer-assumed"},
    {CautionKind::profile_unfit, "profile-unfit"},
    {CautionKind::profile_table, "profile-table"},
    {CautionKind::several_pages, "several-pages", {"pages"}},
    {CautionKind::transparency_unused, "transparency-unused"},
    {CautionKind::channels_unused, "channels-unused"},
    {CautionKind::transfer_tag_odd, "transfer-tag-odd"},
    {CautionKind::grey_response_curve, "grey-response-curve"},
    {CautionKind::inverted, "inverted"},
    {CautionKind::base_clipped, "base-clipped"},
    {CautionKind::no_film, "no-film"},
    {CautionKind::no_frames, "no-frames"},
    {CautionKind::no_clear_film, "no-clear-film"},
    {CautionKind::below_light_path, "below-light-path"},
    {CautionKind::below_clear_film, "below-clear-film"},
    {CautionKind::wedge_alone, "wedge-alone"},
    {CautionKind::transfer_unknown, "transfer-unknown"},
    {CautionKind::bare_light_clipped, "bare-light-clipped"},
    {CautionKind::bare_light_hidden, "bare-light-hidden"},
    {CautionKind::bare_light_partly_clipped, "bare-light-partly-clipped"},
    {CautionKind::channel_clipped, "channel-clipped"},
    {CautionKind::eight_bit, "eight-bit"},
    {CautionKind::camera_display_curve, "camera-display-curve"},
    {CautionKind::grey_scan, "grey-scan"},
    {CautionKind::resolution_tag_wrong, "resolution-tag-wrong"},
    {CautionKind::uneven_light, "uneven-light"},
    {CautionKind::glare_strong, "glare-strong"},
    {CautionKind::glare_of_calibration, "glare-of-calibration"},
    {CautionKind::glare_unknown, "glare-unknown"},
    {CautionKind::zero_remembered, "zero-remembered"},
    {CautionKind::scanner_shape_only, "scanner-shape-only"},
    {CautionKind::scanner_bits, "scanner-bits", {"scan_bits", "calibration_bits"}},
    {CautionKind::scanner_kind, "scanner-kind"},
    {CautionKind::scanner_balance, "scanner-balance", {"off_density"}},
    {CautionKind::scanner_zero, "scanner-zero", {"off_density"}},
    {CautionKind::bracket_ambiguous, "bracket-ambiguous"},
    {CautionKind::metered_frame_missing, "metered-frame-missing", {"frame"}},
    {CautionKind::wedge_place_doubtful, "wedge-place-doubtful"},
    {CautionKind::target_unread, "target-unread"},
    {CautionKind::steps_counted_from_dark_end, "steps-counted-from-dark-end"},
    {CautionKind::steps_counted_from_light_end, "steps-counted-from-light-end", {"drowned"}},
    {CautionKind::steps_left_out, "steps-left-out", {"steps"}},
    {CautionKind::steps_clipped, "steps-clipped", {"steps"}},
    {CautionKind::reference_doubtful, "reference-doubtful", {"read_over_reference"}},
    {CautionKind::bare_light_unknown, "bare-light-unknown"},
    {CautionKind::stray_light_untold, "stray-light-untold"},
    {CautionKind::nominal_wedge, "nominal-wedge"},
    {CautionKind::device_untold, "device-untold"},
    {CautionKind::shape_only, "shape-only"},
    {CautionKind::limit_low, "limit-low"},
    {CautionKind::eight_bits, "eight-bits"},
    {CautionKind::told, "told", {}, {"code"}},
});
static_assert(rows_in_order(rows));

}  // namespace

template <>
std::span<const FactRow<CautionKind>> fact_rows<CautionKind>() {
  return rows;
}

std::string_view caution_code(CautionKind kind) {
  switch (kind) {
    case CautionKind::transparency_unused:
    case CautionKind::channels_unused:
      return "extra-channel";
    case CautionKind::no_film:
    case CautionKind::no_frames:
      return "no-negative";
    case CautionKind::glare_of_calibration:
      return "glare-unknown";
    default:
      return fact_row(kind).code;
  }
}

CautionFamily family_of(CautionKind kind) {
  switch (kind) {
    case CautionKind::base_clipped:
    case CautionKind::bare_light_clipped:
    case CautionKind::bare_light_partly_clipped:
    case CautionKind::channel_clipped:
    case CautionKind::steps_clipped:
      return CautionFamily::clipping;
    case CautionKind::inverted:
      return CautionFamily::inversion;
    case CautionKind::glare_strong:
    case CautionKind::glare_of_calibration:
    case CautionKind::glare_unknown:
      return CautionFamily::glare;
    case CautionKind::uneven_light:
      return CautionFamily::unevenness;
    default:
      return CautionFamily::none;
  }
}

}  // namespace fogline
