// Measures a scan by the program itself, as a process of its own: its time and memory are whole.
#pragma once

#include <fogline/roll/roll_measurement.h>

#include <optional>
#include <string>

namespace bench {

struct MeasuredProcess {
  std::optional<fogline::RollMeasurement> roll;
  std::string trouble;  ///< why there is no roll
  double seconds = 0.0;
  double peak_mb = 0.0;  ///< resident memory
};

/// Runs `program measure scan`, its report written to `json`. A process that takes longer than 180
/// s is ended.
MeasuredProcess measure_in_process(const std::string& program, const std::string& scan,
                                   const std::string& json);

}  // namespace bench
