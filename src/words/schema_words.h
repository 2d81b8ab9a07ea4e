#pragma once

#include <fogline/base/caution.h>
#include <fogline/base/scan_source.h>
#include <fogline/density/doubt.h>
#include <fogline/density/scanner_calibration.h>
#include <fogline/film/film_format.h>
#include <fogline/marks/mark.h>
#include <fogline/process/advice.h>
#include <fogline/process/light_and_development.h>
#include <fogline/process/roll_card.h>
#include <fogline/roll/exposure_target.h>
#include <fogline/roll/roll_measurement.h>
#include <fogline/sensitometry/characteristic_curve.h>
#include <fogline/sensitometry/film_tones.h>
#include <fogline/sensitometry/sensitometry.h>
#include <fogline/tint/tint.h>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace fogline {

/// The word by which files and options name one member of an enumeration: lower case, joined by
/// hyphens. Words never change once published.
template <typename Kind>
struct SchemaWord {
  Kind kind;
  std::string_view word;
};

/// All words of an enumeration, in the order of its members.
template <typename Kind>
struct SchemaWords {
  std::span<const SchemaWord<Kind>> rows;
  /// What a word that this program doesn't know is read as: the member that claims least.
  Kind unknown{};
};

template <typename Kind>
SchemaWords<Kind> schema_words();

template <typename Kind>
std::string_view schema_word(Kind kind) {
  return schema_words<Kind>().rows[static_cast<std::size_t>(kind)].word;
}

/// The member that a word names; nothing for any other word.
template <typename Kind>
std::optional<Kind> kind_from_word(std::string_view word) {
  const auto rows = schema_words<Kind>().rows;
  const auto found = std::find_if(rows.begin(), rows.end(),
                                  [&](const SchemaWord<Kind>& row) { return row.word == word; });
  return found == rows.end() ? std::nullopt : std::optional(found->kind);
}

template <>
SchemaWords<FilmFormat> schema_words();
template <>
SchemaWords<TransferKind> schema_words();
template <>
SchemaWords<TransferSource> schema_words();
template <>
SchemaWords<ZeroSource> schema_words();
template <>
SchemaWords<CalibrationMethod> schema_words();
template <>
SchemaWords<ScannerDevice> schema_words();
template <>
SchemaWords<DoubtSource> schema_words();
template <>
SchemaWords<Fitness> schema_words();
template <>
SchemaWords<DensitiesAbove> schema_words();
template <>
SchemaWords<BaseFogSource> schema_words();
template <>
SchemaWords<ContrastMethod> schema_words();
template <>
SchemaWords<StepRole> schema_words();
template <>
SchemaWords<OutlineKind> schema_words();
template <>
SchemaWords<ShapeFamily> schema_words();
template <>
SchemaWords<TriangleState> schema_words();
template <>
SchemaWords<TonePart> schema_words();
template <>
SchemaWords<Severity> schema_words();
template <>
SchemaWords<TintKind> schema_words();
template <>
SchemaWords<MarkKind> schema_words();
template <>
SchemaWords<DevelopmentKind> schema_words();
template <>
SchemaWords<BathChange> schema_words();
template <>
SchemaWords<FilmType> schema_words();
template <>
SchemaWords<PrintWith> schema_words();
template <>
SchemaWords<FixKind> schema_words();
template <>
SchemaWords<TargetKind> schema_words();

}  // namespace fogline
