#include "words/schema_words.h"

#include "base/member_names.h"

#include <array>

namespace fogline {

// A member added without its word fails to compile.

template <>
SchemaWords<FilmFormat> schema_words() {
  static constexpr std::array<SchemaWord<FilmFormat>, 4> rows{{
      {FilmFormat::f135, "135"},
      {FilmFormat::f120, "120"},
      {FilmFormat::sheet, "sheet"},
      {FilmFormat::unknown, "unknown"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, FilmFormat::unknown};
}

template <>
SchemaWords<TransferKind> schema_words() {
  static constexpr std::array<SchemaWord<TransferKind>, 5> rows{{
      {TransferKind::linear, "linear"},
      {TransferKind::srgb, "srgb"},
      {TransferKind::power, "power"},
      {TransferKind::curve, "curve"},
      {TransferKind::scanner, "scanner-file"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, TransferKind::curve};
}

template <>
SchemaWords<TransferSource> schema_words() {
  static constexpr std::array<SchemaWord<TransferSource>, 5> rows{{
      {TransferSource::icc_profile, "icc-profile"},
      {TransferSource::file_tag, "file-tag"},
      {TransferSource::option, "option"},
      {TransferSource::scanner_file, "scanner-file"},
      {TransferSource::assumed, "assumed"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, TransferSource::assumed};
}

template <>
SchemaWords<ZeroSource> schema_words() {
  static constexpr std::array<SchemaWord<ZeroSource>, 5> rows{{
      {ZeroSource::perforations, "perforations"},
      {ZeroSource::clear_gate, "clear-gate"},
      {ZeroSource::reference_scan, "reference-scan"},
      {ZeroSource::scanner_file, "scanner-file"},
      {ZeroSource::none, "none"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, ZeroSource::none};
}

template <>
SchemaWords<CalibrationMethod> schema_words() {
  static constexpr std::array<SchemaWord<CalibrationMethod>, 4> rows{{
      {CalibrationMethod::wedge, "wedge"},
      {CalibrationMethod::nominal_wedge, "nominal-wedge"},
      {CalibrationMethod::layers, "layers"},
      {CalibrationMethod::bracket, "bracket"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, CalibrationMethod::layers};
}

template <>
SchemaWords<ScannerDevice> schema_words() {
  static constexpr std::array<SchemaWord<ScannerDevice>, 4> rows{{
      {ScannerDevice::unknown, "unknown"},
      {ScannerDevice::flatbed, "flatbed"},
      {ScannerDevice::film_scanner, "film-scanner"},
      {ScannerDevice::camera, "camera"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, ScannerDevice::unknown};
}

template <>
SchemaWords<DoubtSource> schema_words() {
  static constexpr std::array<SchemaWord<DoubtSource>, 8> rows{{
      {DoubtSource::noise, "noise"},
      {DoubtSource::zero, "zero"},
      {DoubtSource::evenness, "evenness"},
      {DoubtSource::clipping, "clipping"},
      {DoubtSource::stray_light, "stray-light"},
      {DoubtSource::transfer, "transfer"},
      {DoubtSource::certificate, "certificate"},
      {DoubtSource::angle, "angle-of-light"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, DoubtSource::noise};
}

template <>
SchemaWords<Fitness> schema_words() {
  static constexpr std::array<SchemaWord<Fitness>, 6> rows{{
      {Fitness::measured, "measured"},
      {Fitness::comparable, "comparable"},
      {Fitness::indicative, "indicative"},
      {Fitness::relative, "relative"},
      {Fitness::marks_only, "marks-only"},
      {Fitness::unfit, "unfit"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, Fitness::unfit};
}

template <>
SchemaWords<DensitiesAbove> schema_words() {
  static constexpr std::array<SchemaWord<DensitiesAbove>, 2> rows{{
      {DensitiesAbove::light_path, "light-path"},
      {DensitiesAbove::base, "base"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, DensitiesAbove::base};
}

template <>
SchemaWords<BaseFogSource> schema_words() {
  static constexpr std::array<SchemaWord<BaseFogSource>, 5> rows{{
      {BaseFogSource::rebate, "rebate"},
      {BaseFogSource::between_frames, "between-frames"},
      {BaseFogSource::unexposed_frame, "unexposed-frame"},
      {BaseFogSource::marked_area, "marked-area"},
      {BaseFogSource::lowest_density, "lowest-density"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, BaseFogSource::lowest_density};
}

template <>
SchemaWords<ContrastMethod> schema_words() {
  static constexpr std::array<SchemaWord<ContrastMethod>, 5> rows{{
      {ContrastMethod::wedge, "wedge"},
      {ContrastMethod::bracket, "bracket"},
      {ContrastMethod::marked_areas, "marked-areas"},
      {ContrastMethod::scene_estimate, "scene-estimate"},
      {ContrastMethod::none, "none"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, ContrastMethod::none};
}

template <>
SchemaWords<StepRole> schema_words() {
  static constexpr std::array<SchemaWord<StepRole>, 4> rows{{
      {StepRole::scanner_wedge, "scanner-wedge"},
      {StepRole::exposed_wedge, "exposed-wedge"},
      {StepRole::bracket, "bracket"},
      {StepRole::marked_area, "marked-area"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, StepRole::marked_area};
}

template <>
SchemaWords<OutlineKind> schema_words() {
  static constexpr std::array<SchemaWord<OutlineKind>, 10> rows{{
      {OutlineKind::strip, "strip"},
      {OutlineKind::perforation, "perforation"},
      {OutlineKind::frame, "frame"},
      {OutlineKind::tone_area, "tone-area"},
      {OutlineKind::clear_film, "clear-film"},
      {OutlineKind::light_path, "light-path"},
      {OutlineKind::edge_print, "edge-print"},
      {OutlineKind::leader, "leader"},
      {OutlineKind::opaque, "opaque"},
      {OutlineKind::exposed_step, "exposed-step"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, OutlineKind::frame};
}

template <>
SchemaWords<ShapeFamily> schema_words() {
  static constexpr std::array<SchemaWord<ShapeFamily>, 4> rows{{
      {ShapeFamily::logistic, "logistic"},
      {ShapeFamily::normal, "normal"},
      {ShapeFamily::hyperbolic, "hyperbolic"},
      {ShapeFamily::dispersed_grains, "dispersed-grains"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, ShapeFamily::logistic};
}

template <>
SchemaWords<TriangleState> schema_words() {
  static constexpr std::array<SchemaWord<TriangleState>, 3> rows{{
      {TriangleState::met, "met"},
      {TriangleState::not_met, "not-met"},
      {TriangleState::cant_tell, "cant-tell"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, TriangleState::cant_tell};
}

template <>
SchemaWords<TonePart> schema_words() {
  static constexpr std::array<SchemaWord<TonePart>, 3> rows{{
      {TonePart::shadow, "shadow"},
      {TonePart::middle, "middle"},
      {TonePart::highlight, "highlight"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, TonePart::middle};
}

template <>
SchemaWords<Severity> schema_words() {
  static constexpr std::array<SchemaWord<Severity>, 3> rows{{
      {Severity::note, "note"},
      {Severity::caution, "caution"},
      {Severity::unfit, "unfit"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, Severity::caution};
}

}  // namespace fogline
