#pragma once

#include <fogline/base/fact.h>

namespace fogline {

/// Why the next roll's exposure is advised as it is. Stops are amounts, their sign being the
/// member's.
enum class ExposureReason {
  got_more_light,
  got_less_light,
  no_error_worth_correcting,
  give_more_light,
  give_less_light,
  gross_error,  ///< points to meter, shutter, aperture or setting
  set_index,
  told,  ///< only its sentence is known, from an older or newer report
};

template <>
std::span<const FactRow<ExposureReason>> fact_rows<ExposureReason>();

}  // namespace fogline
