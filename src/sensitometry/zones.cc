#include "sensitometry/zones.h"

#include "sensitometry/curve_constructions.h"
#include "sensitometry/read_number.h"

#include <fogline/sensitometry/sensitometry.h>

#include <cmath>

namespace fogline {

namespace {

/// A metered tone over the speed point of a film exposed at its ISO speed: 10 times.
constexpr double meter_log_h = 1.0;

/// Log H of a zone, given where the metered one lies or else by the curve's own speed point.
std::optional<double> zone_log_h(const CurveTable& table, std::optional<double> metered_log_h,
                                 int zone) {
  if (metered_log_h) {
    return *metered_log_h + (zone - metered_zone) * stop_log_h;
  }
  const double speed_point = table.log_h_at(speed_point_density);
  return std::isfinite(speed_point)
             ? std::optional(speed_point + (zone - speed_point_zone) * stop_log_h)
             : std::nullopt;
}

/// Index that would move the speed point to `below_metered` under the metered exposure.
CurveReading supported_index(const FittedCurve& curve, double metered_log_h, double index,
                             double below_metered) {
  return read_number(curve, [=](const CurveTable& table) -> std::optional<Construction> {
    const double at = table.log_h_at(speed_point_density);
    if (!std::isfinite(at)) {
      return std::nullopt;
    }
    return Construction{index * std::pow(10.0, metered_log_h - below_metered - at), at, at};
  });
}

}  // namespace

ZonePlacement place_zones(const FittedCurve& curve, std::optional<double> metered_log_h,
                          std::optional<double> exposure_index) {
  ZonePlacement placement;
  placement.metered = metered_log_h.has_value();
  for (int zone = first_zone; zone <= last_zone; ++zone) {
    ZoneDensity density;
    density.zone = zone;
    density.log_h = zone_log_h(curve.mean, metered_log_h, zone).value_or(0.0);
    density.net_density =
        read_number(curve, [=](const CurveTable& table) -> std::optional<Construction> {
          const auto at = zone_log_h(table, metered_log_h, zone);
          return at ? std::optional(Construction{table.density_at(*at), *at, *at}) : std::nullopt;
        });
    placement.zones.push_back(density);
  }
  placement.density_range =
      read_number(curve, [=](const CurveTable& table) -> std::optional<Construction> {
        const auto dark = zone_log_h(table, metered_log_h, speed_point_zone);
        const auto bright = zone_log_h(table, metered_log_h, bright_zone);
        if (!dark || !bright) {
          return std::nullopt;
        }
        return Construction{table.density_at(*bright) - table.density_at(*dark), *dark, *bright};
      });
  if (!metered_log_h || !exposure_index) {
    placement.exposure_index =
        metered_log_h ? Unknown::no_exposure_index : Unknown::curve_not_metered;
    placement.exposure_index_by_meter = placement.exposure_index;
    return placement;
  }
  placement.exposure_index = supported_index(curve, *metered_log_h, *exposure_index,
                                             (metered_zone - speed_point_zone) * stop_log_h);
  placement.exposure_index_by_meter =
      supported_index(curve, *metered_log_h, *exposure_index, meter_log_h);
  return placement;
}

CurveReading useful_range(const FittedCurve& curve) {
  constexpr double slope_width = 0.06;
  constexpr double stride = 0.02;
  const double last = curve.sure_end_log_h;
  const auto end_of = [=](const CurveTable& table, double begin) {
    const double least = table.slope_at(begin, slope_width);
    // The slope first rises from the toe.
    for (double log_h = begin + 0.3; log_h < last; log_h += stride) {
      if (table.slope_at(log_h, slope_width) < least) {
        return log_h;
      }
    }
    return last;
  };
  CurveReading reading =
      read_number(curve, [=](const CurveTable& table) -> std::optional<Construction> {
        const auto begin = fractional_gradient_point(table);
        if (!begin) {
          return std::nullopt;
        }
        const double end = end_of(table, *begin);
        return Construction{end - *begin, *begin, end};
      });
  const auto begin = fractional_gradient_point(curve.mean);
  if (reading && begin && end_of(curve.mean, *begin) >= last) {
    reading->at_least = true;
    reading->upper95.reset();
  }
  return reading;
}

}  // namespace fogline
