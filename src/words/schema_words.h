#pragma once

#include <fogline/base/caution.h>
#include <fogline/base/scan_source.h>
#include <fogline/density/doubt.h>
#include <fogline/density/fitness.h>
#include <fogline/density/scanner_calibration.h>
#include <fogline/film/film_format.h>
#include <fogline/marks/mark.h>
#include <fogline/process/advice.h>
#include <fogline/process/curve_judgement.h>
#include <fogline/process/roll_card.h>
#include <fogline/roll/exposure_target.h>
#include <fogline/roll/roll_measurement.h>
#include <fogline/sensitometry/base_fog.h>
#include <fogline/sensitometry/curve_shape.h>
#include <fogline/sensitometry/film_speed.h>
#include <fogline/sensitometry/scene_contrast.h>
#include <fogline/tint/tint.h>

#include <string_view>

namespace fogline {

/// The words by which `calibration/report.schema.json` names each kind: lower case, joined by
/// hyphens. They never change once published.
std::string_view schema_word(FilmFormat format);
std::string_view schema_word(TransferKind kind);
std::string_view schema_word(TransferSource source);
std::string_view schema_word(ZeroSource source);
std::string_view schema_word(CalibrationMethod method);
std::string_view schema_word(DoubtSource source);
std::string_view schema_word(Fitness fitness);
std::string_view schema_word(DensitiesAbove above);
std::string_view schema_word(BaseFogSource source);
std::string_view schema_word(ContrastMethod method);
std::string_view schema_word(StepRole role);
std::string_view schema_word(ShapeFamily family);
std::string_view schema_word(TriangleState state);
std::string_view schema_word(TonePart part);
std::string_view schema_word(DevelopmentKind kind);
std::string_view schema_word(Severity severity);
std::string_view schema_word(TintKind kind);
std::string_view schema_word(MarkKind kind);
std::string_view schema_word(BathChange change);
std::string_view schema_word(FilmType type);
std::string_view schema_word(PrintWith use);
std::string_view schema_word(FixKind kind);
std::string_view schema_word(TargetKind kind);

}  // namespace fogline
