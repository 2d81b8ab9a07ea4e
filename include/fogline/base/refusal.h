#pragma once

#include <fogline/base/fact.h>

#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace fogline {

/// Why a file can't be used, written or replaced, grouped by what was wanted of it. The file itself
/// stands beside the fact (`FileError`, `UnreadFile`); lines count from 1.
enum class Refusal {
  // A file that can't be opened, read or written.
  cant_open,
  is_folder,
  is_no_file,
  is_empty,
  cant_read_on,
  cant_write,
  breaks_off,
  damaged,
  undecodable,
  // What the program itself won't read or replace.
  scan_is_folder,
  page_is_folder,
  foreign_page,
  output_is_folder,
  foreign_scanner_file,
  output_stopped,
  // A picture that isn't one of a scan, or isn't whole.
  no_picture,
  no_pixels,
  too_many_pixels,
  larger_than_file,
  no_own_tone_curve,
  tiff_without_size,
  rare_colour_difference,
  palette,
  cmyk,
  cielab,
  mask_only,
  raw_mosaic,
  not_grey_or_rgb,
  one_bit,
  odd_sample_bits,
  odd_sample_count,
  few_bits,
  unknown_compression,
  compressed_whole,
  strips_without_size,
  tiles_beyond_reason,
  rows_beyond_reason,
  too_many_huge_tiles,
  huge_strip,
  strip_missing,
  strip_rows_unfit,
  strip_size_unfit,
  ends_too_soon,
  too_many_scans,
  animation,
  huge_interlaced,
  no_memory,
  inks,
  // A roll card: its file, a key that isn't there, a value that can't be, keys that don't agree.
  card_unreadable,
  card_too_large,
  card_no_toml,
  card_key_unknown,
  card_key_of_other_kind,
  card_keys_exclude,
  card_metered_time_alone,
  card_lacks_name,
  card_lacks_word,
  card_lacks_stops,
  card_lacks_reference,
  card_lacks_frame,
  card_lacks_zone,
  card_wants_table,
  card_wants_tables,
  card_wants_text,
  card_wants_word,
  card_wants_date,
  card_wants_minutes,
  card_wants_count,
  card_wants_shutter_time,
  card_wants_shutter_times,
  card_wants_temperature,
  card_wants_volume,
  card_wants_fills,
  card_wants_stops,
  card_wants_doubt,
  card_wants_lux_seconds,
  card_wants_zone,
  card_wants_contrast_index,
  card_wants_exposure_index,
  card_wants_base_tint,
  // A table of a wedge's steps.
  reference_too_large,
  reference_line_unknown,
  reference_no_density,
  reference_step_count,
  reference_step_twice,
  reference_out_of_order,
  reference_no_densities,
  reference_format_breaks_off,
  reference_data_break_off,
  reference_row_unfit,
  reference_sets_unfit,
  // A scanner file.
  scanner_file_too_large,
  scanner_file_no_json,
  no_scanner_file,
  scanner_file_of_other_version,
  scanner_file_changed,
  scanner_file_lacks_field,
  scanner_file_field_impossible,
  // A table of knowledge that the program brings along (`calibration/`).
  knowledge_no_toml,
  knowledge_key_missing,
  knowledge_key_unknown,
  knowledge_without_source,
  knowledge_wants_table,
  knowledge_wants_number,
  knowledge_wants_whole_number,
  knowledge_wants_list,
  knowledge_wants_values,
  knowledge_out_of_range,
  // A scan that can't be calibrated by, or measured with what was named.
  no_wedge,
  more_steps_than_reference,
  steps_untold_by_bare_light,
  steps_without_bare_light,
  wedge_ends_early,
  too_few_lights,
  codes_not_falling,
  codes_not_of_light,
  shots_differ,
  areas_not_as_named,
  blank_of_other_scan,
  blank_clipped,
  grey_scan_colour_scanner,
  colour_scan_grey_scanner,
  area_off_film,
  // A report that can't be read back.
  report_no_json,
  no_report,
  report_of_other_version,
  report_field_unfit,
  // Only its sentence is known, from an older or a newer report.
  told,
};

/// In the order of the members. Names come in the file's own or the system's words: a key of a
/// card, what a decoder said.
template <>
std::span<const FactRow<Refusal>> fact_rows<Refusal>();

/// A file that can't be read or written, or doesn't hold what it should: which, and why as a fact.
/// `what()` is the file and the fact's code; `sentence_of` (words/refusal_words.h) says it in
/// English.
class FileError : public std::runtime_error {
 public:
  FileError(std::string file, Fact<Refusal> why)
      : std::runtime_error(file + ": " + std::string(fact_row(why.kind).code)),
        file_(std::move(file)),
        why_(std::move(why)) {}
  /// Numbers and names in the order of the kind's row.
  FileError(std::string file, Refusal kind, std::vector<double> numbers = {},
            std::vector<std::string> names = {})
      : FileError(std::move(file), {kind, std::move(numbers), std::move(names), {}}) {}

  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] const Fact<Refusal>& why() const { return why_; }

 private:
  std::string file_;
  Fact<Refusal> why_;
};

}  // namespace fogline
