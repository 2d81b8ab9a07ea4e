#pragma once

namespace fogline {

/// Kinds of film by their outer geometry.
/// f135: 34.975 mm wide, perforated on both edges every 4.750 mm (ISO 1007).
/// f120: 61.5 mm wide, no perforations (ISO 732).
/// sheet: a single cut piece, about 100 x 125 mm or near it (ISO 1012).
enum class FilmFormat { f135, f120, sheet, unknown };

}  // namespace fogline
