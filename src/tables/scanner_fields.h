#pragma once

#include <fogline/density/scanner_calibration.h>

#include <nlohmann/json_fwd.hpp>

namespace fogline {

/// All of a calibration but its checksum, field by field. Members keep their order in the file.
nlohmann::ordered_json json_from_calibration_fields(const ScannerCalibration& calibration);

/// The other way round. Throws std::runtime_error with a sentence's end ("has no field x") where a
/// field is missing, of another type or can't be.
ScannerCalibration calibration_from_json(const nlohmann::ordered_json& json);

}  // namespace fogline
