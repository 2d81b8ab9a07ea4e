#include "sensitometry/curve_constructions.h"
#include "sensitometry/read_number.h"

#include <fogline/sensitometry/sensitometry.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace fogline {

namespace {

constexpr double speed_constant = 0.80;
constexpr int least_degrees = 7;
/// The arithmetic numbers of 7 to 36 degrees.
constexpr std::array arithmetic{4,   5,   6,   8,   10,   12,   16,   20,   25,   32,
                                40,  50,  64,  80,  100,  125,  160,  200,  250,  320,
                                400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200};
/// Delta-X at the triangle's own gain.
constexpr double standard_delta_x = 0.296;
/// Surer than this, the triangle's condition is told.
constexpr double sure = 0.8;

/// Of speeds, whose logarithm is what errs evenly.
CurveReading speed_of(const FittedCurve& curve, bool effective) {
  return read_number(curve, [effective](const CurveTable& table) -> std::optional<Construction> {
    const double at = table.log_h_at(speed_point_density);
    const auto gradient = average_gradient(table, iso_triangle_log_h);
    if (!std::isfinite(at) || (effective && !gradient)) {
      return std::nullopt;
    }
    const double shift =
        effective ? delta_x(*gradient * iso_triangle_log_h) - standard_delta_x : 0.0;
    return Construction{speed_constant * std::pow(10.0, shift - at), at,
                        effective ? at + iso_triangle_log_h : at};
  });
}

}  // namespace

std::optional<IsoSpeedNumber> iso_speed_number(double speed_point_log_h) {
  const double degrees = 1.0 + 10.0 * (std::log10(speed_constant) - speed_point_log_h);
  // The table's limits are decimal numbers: what lies on one by rounding belongs above it.
  const int whole = static_cast<int>(std::floor(degrees + 0.5 + 1e-9));
  const int row = whole - least_degrees;
  if (row < 0 || row >= static_cast<int>(arithmetic.size())) {
    return std::nullopt;
  }
  return IsoSpeedNumber{arithmetic[static_cast<std::size_t>(row)], whole};
}

IsoSpeed read_iso_speed(const FittedCurve& curve, const CurveReadings& readings, bool absolute) {
  IsoSpeed iso;
  if (readings.triangle_gain) {
    const auto within = std::count_if(curve.draws.begin(), curve.draws.end(), [](const auto& draw) {
      const auto gradient = average_gradient(draw, iso_triangle_log_h);
      return gradient &&
             std::abs(*gradient * iso_triangle_log_h - iso_triangle_gain) <= iso_triangle_tolerance;
    });
    iso.probability = static_cast<double>(within) / static_cast<double>(curve.draws.size());
    iso.triangle = *iso.probability >= sure         ? TriangleState::met
                   : *iso.probability <= 1.0 - sure ? TriangleState::not_met
                                                    : TriangleState::cant_tell;
  }
  if (!absolute) {
    iso.speed = Unknown::exposures_relative;
    iso.effective_speed = Unknown::exposures_relative;
    return iso;
  }
  iso.effective_speed = speed_of(curve, true);
  if (iso.triangle == TriangleState::met) {
    iso.speed = speed_of(curve, false);
    if (readings.speed_point_log_h) {
      iso.number = iso_speed_number(readings.speed_point_log_h->value);
    }
  } else if (!iso.probability) {
    iso.speed = readings.triangle_gain.why();
  } else {
    iso.speed = iso.triangle == TriangleState::not_met ? Unknown::triangle_not_met
                                                       : Unknown::triangle_untold;
  }
  return iso;
}

}  // namespace fogline
