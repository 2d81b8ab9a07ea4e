#include <fogline/base/refusal.h>

#include <array>

namespace fogline {

namespace {

constexpr std::array<FactRow<Refusal>, 114> rows{{
    {Refusal::cant_open, "cant-open", {}, {"system"}},
    {Refusal::is_folder, "is-folder"},
    {Refusal::is_no_file, "is-no-file"},
    {Refusal::is_empty, "is-empty"},
    {Refusal::cant_read_on, "cant-read-on", {}, {"system"}},
    {Refusal::cant_write, "cant-write", {}, {"system"}},
    {Refusal::breaks_off, "breaks-off"},
    {Refusal::damaged, "damaged"},
    {Refusal::undecodable, "undecodable", {}, {"decoder"}},
    {Refusal::scan_is_folder, "scan-is-folder"},
    {Refusal::page_is_folder, "page-is-folder"},
    {Refusal::foreign_page, "foreign-page"},
    {Refusal::output_is_folder, "output-is-folder"},
    {Refusal::foreign_scanner_file, "foreign-scanner-file"},
    {Refusal::output_stopped, "output-stopped"},
    {Refusal::no_picture, "no-picture"},
    {Refusal::no_pixels, "no-pixels"},
    {Refusal::too_many_pixels, "too-many-pixels", {"width_px", "height_px"}},
    {Refusal::larger_than_file, "larger-than-file", {"file_bytes"}},
    {Refusal::no_own_tone_curve, "no-own-tone-curve"},
    {Refusal::tiff_without_size, "tiff-without-size"},
    {Refusal::rare_colour_difference, "rare-colour-difference"},
    {Refusal::palette, "palette"},
    {Refusal::cmyk, "cmyk"},
    {Refusal::cielab, "cielab"},
    {Refusal::mask_only, "mask-only"},
    {Refusal::raw_mosaic, "raw-mosaic"},
    {Refusal::not_grey_or_rgb, "not-grey-or-rgb"},
    {Refusal::one_bit, "one-bit"},
    {Refusal::odd_sample_bits, "odd-sample-bits"},
    {Refusal::odd_sample_count, "odd-sample-count"},
    {Refusal::few_bits, "few-bits"},
    {Refusal::unknown_compression, "unknown-compression", {"tiff_compression"}},
    {Refusal::compressed_whole, "compressed-whole"},
    {Refusal::strips_without_size, "strips-without-size"},
    {Refusal::tiles_beyond_reason, "tiles-beyond-reason"},
    {Refusal::rows_beyond_reason, "rows-beyond-reason"},
    {Refusal::too_many_huge_tiles, "too-many-huge-tiles"},
    {Refusal::huge_strip, "huge-strip"},
    {Refusal::strip_missing, "strip-missing"},
    {Refusal::strip_rows_unfit, "strip-rows-unfit"},
    {Refusal::strip_size_unfit, "strip-size-unfit"},
    {Refusal::ends_too_soon, "ends-too-soon"},
    {Refusal::too_many_scans, "too-many-scans"},
    {Refusal::animation, "animation"},
    {Refusal::huge_interlaced, "huge-interlaced"},
    {Refusal::no_memory, "no-memory"},
    {Refusal::inks, "inks"},
    {Refusal::card_unreadable, "card-unreadable"},
    {Refusal::card_too_large, "card-too-large"},
    {Refusal::card_no_toml, "card-no-toml", {"line"}, {"parser"}},
    {Refusal::card_key_unknown, "card-key-unknown", {"line"}, {"key"}},
    {Refusal::card_key_of_other_kind, "card-key-of-other-kind", {"line"}, {"key", "kind"}},
    {Refusal::card_keys_exclude, "card-keys-exclude", {"line"}, {"key", "other"}},
    {Refusal::card_metered_time_alone, "card-metered-time-alone", {"line"}, {"key"}},
    {Refusal::card_lacks_name, "card-lacks-name"},
    {Refusal::card_lacks_word, "card-lacks-word", {"line"}, {"key", "words"}},
    {Refusal::card_lacks_stops, "card-lacks-stops", {"line"}, {"key"}},
    {Refusal::card_lacks_reference, "card-lacks-reference", {"line"}, {"key"}},
    {Refusal::card_lacks_frame, "card-lacks-frame", {"line"}, {"key"}},
    {Refusal::card_lacks_zone, "card-lacks-zone", {"line"}, {"key"}},
    {Refusal::card_wants_table, "card-wants-table", {"line"}, {"key"}},
    {Refusal::card_wants_tables, "card-wants-tables", {"line"}, {"key"}},
    {Refusal::card_wants_text, "card-wants-text", {"line"}, {"key"}},
    {Refusal::card_wants_word, "card-wants-word", {"line"}, {"key", "words"}},
    {Refusal::card_wants_date, "card-wants-date", {"line"}, {"key"}},
    {Refusal::card_wants_minutes, "card-wants-minutes", {"line"}, {"key"}},
    {Refusal::card_wants_count, "card-wants-count", {"line"}, {"key"}},
    {Refusal::card_wants_shutter_time, "card-wants-shutter-time", {"line"}, {"key"}},
    {Refusal::card_wants_shutter_times, "card-wants-shutter-times", {"line"}, {"key"}},
    {Refusal::card_wants_temperature, "card-wants-temperature", {"line"}, {"key"}},
    {Refusal::card_wants_volume, "card-wants-volume", {"line"}, {"key"}},
    {Refusal::card_wants_fills, "card-wants-fills", {"line"}, {"key"}},
    {Refusal::card_wants_stops, "card-wants-stops", {"line"}, {"key"}},
    {Refusal::card_wants_doubt, "card-wants-doubt", {"line"}, {"key"}},
    {Refusal::card_wants_lux_seconds, "card-wants-lux-seconds", {"line"}, {"key"}},
    {Refusal::card_wants_zone, "card-wants-zone", {"line"}, {"key"}},
    {Refusal::card_wants_contrast_index, "card-wants-contrast-index", {"line"}, {"key"}},
    {Refusal::card_wants_exposure_index, "card-wants-exposure-index", {"line"}, {"key"}},
    {Refusal::card_wants_base_tint, "card-wants-base-tint", {"line"}, {"key"}},
    {Refusal::reference_too_large, "reference-too-large"},
    {Refusal::reference_line_unknown, "reference-line-unknown", {"line"}},
    {Refusal::reference_no_density, "reference-no-density", {"line"}, {"text"}},
    {Refusal::reference_step_count, "reference-step-count", {"steps"}},
    {Refusal::reference_step_twice, "reference-step-twice", {}, {"step"}},
    {Refusal::reference_out_of_order, "reference-out-of-order", {"density"}, {"step"}},
    {Refusal::reference_no_densities, "reference-no-densities"},
    {Refusal::reference_format_breaks_off, "reference-format-breaks-off"},
    {Refusal::reference_data_break_off, "reference-data-break-off"},
    {Refusal::reference_row_unfit, "reference-row-unfit", {"values", "line", "fields"}},
    {Refusal::reference_sets_unfit, "reference-sets-unfit", {"rows"}, {"sets"}},
    {Refusal::scanner_file_too_large, "scanner-file-too-large"},
    {Refusal::scanner_file_no_json, "scanner-file-no-json"},
    {Refusal::no_scanner_file, "no-scanner-file"},
    {Refusal::scanner_file_of_other_version, "scanner-file-of-other-version"},
    {Refusal::scanner_file_changed, "scanner-file-changed"},
    {Refusal::scanner_file_lacks_field, "scanner-file-lacks-field", {}, {"field"}},
    {Refusal::scanner_file_field_impossible, "scanner-file-field-impossible", {}, {"field"}},
    {Refusal::shipped_row_missing, "shipped-row-missing", {}, {"key", "row"}},
    {Refusal::no_wedge, "no-wedge"},
    {Refusal::more_steps_than_reference, "more-steps-than-reference", {"seen", "known"}},
    {Refusal::steps_untold_by_bare_light, "steps-untold-by-bare-light", {"seen", "known"}},
    {Refusal::steps_without_bare_light, "steps-without-bare-light", {"seen", "known"}},
    {Refusal::wedge_ends_early, "wedge-ends-early", {"seen", "known", "after"}},
    {Refusal::too_few_lights, "too-few-lights"},
    {Refusal::codes_not_falling, "codes-not-falling"},
    {Refusal::codes_not_of_light, "codes-not-of-light"},
    {Refusal::shots_differ, "shots-differ", {}, {"first"}},
    {Refusal::areas_not_as_named, "areas-not-as-named", {"seen", "named"}},
    {Refusal::blank_of_other_scan, "blank-of-other-scan", {}, {"scan"}},
    {Refusal::blank_clipped, "blank-clipped"},
    {Refusal::grey_scan_colour_scanner, "grey-scan-colour-scanner"},
    {Refusal::colour_scan_grey_scanner, "colour-scan-grey-scanner"},
    {Refusal::area_off_film, "area-off-film", {"stops"}},
}};

constexpr bool in_order() {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (static_cast<std::size_t>(rows[i].kind) != i) {
      return false;
    }
  }
  return true;
}
static_assert(in_order(), "rows stand in the order of the members");

}  // namespace

template <>
std::span<const FactRow<Refusal>> fact_rows<Refusal>() {
  return rows;
}

}  // namespace fogline
