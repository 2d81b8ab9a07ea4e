#pragma once

#include <fogline/base/refusal.h>
#include <fogline/density/scanner_calibration.h>

#include <stdexcept>
#include <string>

#include <nlohmann/json_fwd.hpp>

namespace fogline {

/// A field of a scanner file that is missing, of another type or can't be; `what()` is its name.
class WrongField : public std::runtime_error {
 public:
  WrongField(Refusal why, const std::string& field) : std::runtime_error(field), why_(why) {}
  [[nodiscard]] Refusal why() const { return why_; }

 private:
  Refusal why_;
};

/// All of a calibration but its checksum, field by field. Members keep their order in the file.
nlohmann::ordered_json json_from_calibration_fields(const ScannerCalibration& calibration);

/// The other way round. Throws WrongField.
ScannerCalibration calibration_from_json(const nlohmann::ordered_json& json);

}  // namespace fogline
