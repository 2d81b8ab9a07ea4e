#include "record/sensitometry_json.h"

#include "sensitometry/curve_constructions.h"
#include "words/schema_words.h"

#include <cmath>

#include <nlohmann/json.hpp>

namespace fogline {

namespace {

/// Places of the curve that are written: beyond the exposures by a stop.
constexpr double written_beyond = 0.3;
constexpr std::size_t places_a_row = 2;

void put(Json& object, Whys& whys, const char* name, const CurveReading& reading) {
  object[name] = json_from_quantity(reading);
  note_why(whys, name, reading);
}

Json json_from_curve(const CharacteristicCurve& curve, double base) {
  Json rows = Json::array();
  for (std::size_t i = 0; i < curve.mean.net_density.size(); i += places_a_row) {
    const double log_h = curve.mean.begin_log_h + curve.mean.step_log_h * static_cast<double>(i);
    if (log_h < curve.begin_log_h - written_beyond || log_h > curve.end_log_h + written_beyond) {
      continue;
    }
    rows.push_back({{"log_h", json_from_density(log_h)},
                    {"density", json_from_density(base + curve.mean.net_density[i])},
                    {"net_density", json_from_density(curve.mean.net_density[i])},
                    {"u95", json_from_density(coverage_factor_95 * curve.doubt[i])}});
  }
  return rows;
}

Json json_from_families(const CharacteristicCurve& curve) {
  Json families = Json::object();
  for (const ShapeFamily family : shape_families) {
    families[std::string(schema_word(family))] =
        json_from_probability(curve.family_probability[static_cast<std::size_t>(family)]);
  }
  return families;
}

Json json_from_iso(const IsoSpeed& iso) {
  Json object{
      {"triangle", schema_word(iso.triangle)},
      {"probability", iso.probability ? json_from_probability(*iso.probability) : Json(nullptr)}};
  Whys whys;
  note_why(whys, "probability", iso.probability);
  put(object, whys, "speed", iso.speed);
  put(object, whys, "effective_speed", iso.effective_speed);
  if (iso.number) {
    object["arithmetic"] = iso.number->arithmetic;
    object["degrees"] = iso.number->degrees;
  }
  put_reasons(object, whys);
  return object;
}

Json json_from_zones(const ZonePlacement& placement) {
  Json object{{"zone_i_at", placement.metered ? "four-stops-under-the-meter" : "speed-point"}};
  Json zones = Json::array();
  for (const ZoneDensity& zone : placement.zones) {
    Json row{{"zone", zone.zone}, {"log_h", json_from_density(zone.log_h)}};
    Whys whys;
    put(row, whys, "net_density", zone.net_density);
    put_reasons(row, whys);
    zones.push_back(std::move(row));
  }
  object["densities"] = std::move(zones);
  Whys whys;
  put(object, whys, "density_range", placement.density_range);
  put(object, whys, "exposure_index", placement.exposure_index);
  put(object, whys, "exposure_index_by_meter", placement.exposure_index_by_meter);
  put_reasons(object, whys);
  return object;
}

}  // namespace

void put_sensitometry(Json& contrast, const Sensitometry& read, double base, Whys& whys) {
  const CurveReadings& readings = read.readings;
  contrast["base_fog_by_curve"] =
      json_from_quantity(Quantity{base + read.curve.base_fog,
                                  coverage_factor_95 * read.curve.base_fog_doubt,
                                  {},
                                  {},
                                  {},
                                  false});
  contrast["log_h_absolute"] = read.scale.absolute;
  contrast["average_gradient_log_h_range"] = usual_gradient_log_h;
  put(contrast, whys, "average_gradient", readings.gradient_150);
  put(contrast, whys, "average_gradient_130", readings.gradient_130);
  put(contrast, whys, "average_gradient_180", readings.gradient_180);
  put(contrast, whys, "average_gradient_zones", readings.gradient_zones);
  put(contrast, whys, "gamma", readings.gamma);
  put(contrast, whys, "straight_line_log_h", readings.straight_length);
  put(contrast, whys, "toe_log_h", readings.toe_length);
  put(contrast, whys, "toe_slope_part", readings.toe_slope_part);
  put(contrast, whys, "shoulder_net_density", readings.shoulder_density);
  put(contrast, whys, "speed_point_log_h", readings.speed_point_log_h);
  put(contrast, whys, "triangle_gain", readings.triangle_gain);
  put(contrast, whys, "fractional_gradient_log_h", readings.fractional_gradient_log_h);
  put(contrast, whys, "delta_x_log_h", readings.delta_x_log_h);
  put(contrast, whys, "useful_range_log_h", read.useful_range_log_h);
  contrast["iso"] = json_from_iso(read.iso);
  contrast["zones"] = json_from_zones(read.placement);
  contrast["families"] = json_from_families(read.curve);
  contrast["residual_rms"] = json_from_density(read.curve.residual_rms);
  contrast["curve"] = json_from_curve(read.curve, base);
}

}  // namespace fogline
