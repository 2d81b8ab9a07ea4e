#include "words/schema_words.h"

namespace fogline {

// No switch below has a default: a kind added without its word is a compiler warning.

std::string_view schema_word(FilmFormat format) {
  switch (format) {
    case FilmFormat::f135:
      return "135";
    case FilmFormat::f120:
      return "120";
    case FilmFormat::sheet:
      return "sheet";
    case FilmFormat::unknown:
      break;
  }
  return "unknown";
}

std::string_view schema_word(TransferKind kind) {
  switch (kind) {
    case TransferKind::linear:
      return "linear";
    case TransferKind::srgb:
      return "srgb";
    case TransferKind::power:
      return "power";
    case TransferKind::scanner:
      return "scanner-file";
    case TransferKind::curve:
      break;
  }
  return "curve";
}

std::string_view schema_word(TransferSource source) {
  switch (source) {
    case TransferSource::icc_profile:
      return "icc-profile";
    case TransferSource::file_tag:
      return "file-tag";
    case TransferSource::option:
      return "option";
    case TransferSource::scanner_file:
      return "scanner-file";
    case TransferSource::assumed:
      break;
  }
  return "assumed";
}

std::string_view schema_word(ZeroSource source) {
  switch (source) {
    case ZeroSource::perforations:
      return "perforations";
    case ZeroSource::clear_gate:
      return "clear-gate";
    case ZeroSource::reference_scan:
      return "reference-scan";
    case ZeroSource::scanner_file:
      return "scanner-file";
    case ZeroSource::none:
      break;
  }
  return "none";
}

std::string_view schema_word(CalibrationMethod method) {
  switch (method) {
    case CalibrationMethod::nominal_wedge:
      return "nominal-wedge";
    case CalibrationMethod::layers:
      return "layers";
    case CalibrationMethod::bracket:
      return "bracket";
    case CalibrationMethod::wedge:
      break;
  }
  return "wedge";
}

std::string_view schema_word(DoubtSource source) {
  switch (source) {
    case DoubtSource::zero:
      return "zero";
    case DoubtSource::evenness:
      return "evenness";
    case DoubtSource::clipping:
      return "clipping";
    case DoubtSource::stray_light:
      return "stray-light";
    case DoubtSource::transfer:
      return "transfer";
    case DoubtSource::certificate:
      return "certificate";
    case DoubtSource::angle:
      return "angle-of-light";
    case DoubtSource::noise:
      break;
  }
  return "noise";
}

std::string_view schema_word(Fitness fitness) {
  switch (fitness) {
    case Fitness::measured:
      return "measured";
    case Fitness::comparable:
      return "comparable";
    case Fitness::indicative:
      return "indicative";
    case Fitness::relative:
      return "relative";
    case Fitness::marks_only:
      return "marks-only";
    case Fitness::unfit:
      break;
  }
  return "unfit";
}

std::string_view schema_word(DensitiesAbove above) {
  return above == DensitiesAbove::base ? "base" : "light-path";
}

std::string_view schema_word(BaseFogSource source) {
  switch (source) {
    case BaseFogSource::rebate:
      return "rebate";
    case BaseFogSource::between_frames:
      return "between-frames";
    case BaseFogSource::unexposed_frame:
      return "unexposed-frame";
    case BaseFogSource::marked_area:
      return "marked-area";
    case BaseFogSource::lowest_density:
      break;
  }
  return "lowest-density";
}

std::string_view schema_word(ContrastMethod method) {
  switch (method) {
    case ContrastMethod::wedge:
      return "wedge";
    case ContrastMethod::bracket:
      return "bracket";
    case ContrastMethod::marked_areas:
      return "marked-areas";
    case ContrastMethod::scene_estimate:
      return "scene-estimate";
    case ContrastMethod::none:
      break;
  }
  return "none";
}

std::string_view schema_word(StepRole role) {
  switch (role) {
    case StepRole::scanner_wedge:
      return "scanner-wedge";
    case StepRole::exposed_wedge:
      return "exposed-wedge";
    case StepRole::bracket:
      return "bracket";
    case StepRole::marked_area:
      break;
  }
  return "marked-area";
}

std::string_view schema_word(ShapeFamily family) {
  switch (family) {
    case ShapeFamily::logistic:
      return "logistic";
    case ShapeFamily::normal:
      return "normal";
    case ShapeFamily::dispersed_grains:
      return "dispersed-grains";
    case ShapeFamily::hyperbolic:
      break;
  }
  return "hyperbolic";
}

std::string_view schema_word(TriangleState state) {
  switch (state) {
    case TriangleState::met:
      return "met";
    case TriangleState::not_met:
      return "not-met";
    case TriangleState::cant_tell:
      break;
  }
  return "cant-tell";
}

std::string_view schema_word(TonePart part) {
  switch (part) {
    case TonePart::shadow:
      return "shadow";
    case TonePart::middle:
      return "middle";
    case TonePart::highlight:
      break;
  }
  return "highlight";
}

std::string_view schema_word(Severity severity) {
  switch (severity) {
    case Severity::note:
      return "note";
    case Severity::caution:
      return "caution";
    case Severity::unfit:
      break;
  }
  return "unfit";
}

std::string_view schema_word(DevelopmentKind kind) {
  switch (kind) {
    case DevelopmentKind::normal:
      return "normal";
    case DevelopmentKind::expanded:
      return "expanded";
    case DevelopmentKind::contracted:
      break;
  }
  return "contracted";
}

}  // namespace fogline
