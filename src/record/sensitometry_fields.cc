#include "record/measurement_tables.h"
#include "sensitometry/curve_constructions.h"

namespace fogline {

using enum Presence;
using enum NumberRange;

namespace {

/// Places of the curve that are repeated for readers who only draw it: beyond the exposures by a
/// stop.
constexpr double written_beyond = 0.3;
constexpr std::size_t places_a_row = 2;

struct CurveRow {
  double log_h = 0.0;
  double density = 0.0;
  double net_density = 0.0;
  double u95 = 0.0;

  friend bool operator==(const CurveRow&, const CurveRow&) = default;
};

std::vector<CurveRow> rows_of(const CharacteristicCurve& curve, double base) {
  std::vector<CurveRow> rows;
  const std::size_t places = std::min(curve.mean.net_density.size(), curve.doubt.size());
  for (std::size_t i = 0; i < places; i += places_a_row) {
    const double log_h = curve.mean.begin_log_h + curve.mean.step_log_h * static_cast<double>(i);
    if (log_h >= curve.begin_log_h - written_beyond && log_h <= curve.end_log_h + written_beyond) {
      const double net = curve.mean.net_density[i];
      rows.push_back({log_h, base + net, net, coverage_factor_95 * curve.doubt[i]});
    }
  }
  return rows;
}

void walk_families(CharacteristicCurve& curve, FieldWalker& walker) {
  if (!walker.enter("families", kept, true)) {
    return;
  }
  walker.object([&] {
    for (const ShapeFamily family : shape_families) {
      walk_field(walker, schema_word(family),
                 curve.family_probability[static_cast<std::size_t>(family)], kept, probability);
    }
  });
  walker.leave();
}

constexpr std::array<std::string_view, 2> zone_i_places{"speed-point",
                                                        "four-stops-under-the-meter"};

void walk_zone_i(ZonePlacement& placement, FieldWalker& walker) {
  if (walker.enter("zone_i_at", required, true)) {
    std::size_t place = placement.metered ? 1 : 0;
    placement.metered = walker.word(place, zone_i_places) && place == 1;
    walker.leave();
  }
}

/// What other fields of `contrast` repeat for readers who look for one number.
void walk_repeats(FieldWalker& walker, const CharacteristicCurve& curve, double base) {
  Quantity base_fog;
  base_fog.value = base + curve.base_fog;
  base_fog.u95 = coverage_factor_95 * curve.base_fog_doubt;
  walk_repeat(walker, "base_fog_by_curve", std::optional(base_fog));
  walk_repeat(walker, "average_gradient_log_h_range", usual_gradient_log_h);
  walk_repeat(walker, "curve", rows_of(curve, base));
}

}  // namespace

template <>
const Fields<CurveRow>& fields_of() {
  static const Fields<CurveRow> fields{
      field("log_h", &CurveRow::log_h),
      field("density", &CurveRow::density),
      field("net_density", &CurveRow::net_density),
      field("u95", &CurveRow::u95, kept, not_negative),
  };
  return fields;
}

template <>
const Fields<CurveTable>& fields_of() {
  static const Fields<CurveTable> fields{
      field("begin_log_h", &CurveTable::begin_log_h),
      field("step_log_h", &CurveTable::step_log_h),
      field("net_density", &CurveTable::net_density),
  };
  return fields;
}

template <>
const Fields<ExposedStep>& fields_of() {
  static const Fields<ExposedStep> fields{
      field("label", &ExposedStep::label),
      field("log_h", &ExposedStep::log_h),
      field("log_h_doubt", &ExposedStep::log_h_doubt),
      field("density", &ExposedStep::density),
      field("density_doubt", &ExposedStep::density_doubt),
      field("left_out", &ExposedStep::left_out, left_out),
  };
  return fields;
}

template <>
const Fields<CharacteristicCurve>& fields_of() {
  static const Fields<CharacteristicCurve> fields{
      field("mean", &CharacteristicCurve::mean),
      field("doubt", &CharacteristicCurve::doubt),
      field("base_fog", &CharacteristicCurve::base_fog),
      field("base_fog_doubt", &CharacteristicCurve::base_fog_doubt),
      field("family", &CharacteristicCurve::family),
      field("begin_log_h", &CharacteristicCurve::begin_log_h),
      field("end_log_h", &CharacteristicCurve::end_log_h),
      field("sure_end_log_h", &CharacteristicCurve::sure_end_log_h),
      field("steps", &CharacteristicCurve::steps),
  };
  return fields;
}

template <>
const Fields<CurveReadings>& fields_of() {
  static const Fields<CurveReadings> fields{
      field("contrast_index_by_curve", &CurveReadings::contrast_index),
      field("average_gradient", &CurveReadings::gradient_150),
      field("average_gradient_130", &CurveReadings::gradient_130),
      field("average_gradient_180", &CurveReadings::gradient_180),
      field("average_gradient_zones", &CurveReadings::gradient_zones),
      field("gamma", &CurveReadings::gamma),
      field("straight_line_log_h", &CurveReadings::straight_length),
      field("toe_log_h", &CurveReadings::toe_length),
      field("toe_slope_part", &CurveReadings::toe_slope_part),
      field("shoulder_net_density", &CurveReadings::shoulder_density),
      field("speed_point_log_h", &CurveReadings::speed_point_log_h),
      field("triangle_gain", &CurveReadings::triangle_gain),
      field("fractional_gradient_log_h", &CurveReadings::fractional_gradient_log_h),
      field("delta_x_log_h", &CurveReadings::delta_x_log_h),
  };
  return fields;
}

template <>
const Fields<IsoSpeed>& fields_of() {
  static const Fields<IsoSpeed> fields{
      field("triangle", &IsoSpeed::triangle, required),
      field("probability", &IsoSpeed::probability, null, probability),
      field("speed", &IsoSpeed::speed),
      field("effective_speed", &IsoSpeed::effective_speed),
      {"arithmetic",
       [](IsoSpeed& iso, FieldWalker& walker) {
         // Both lie in the object of the speed.
         if (walker.enter("arithmetic", left_out, iso.number.has_value())) {
           IsoSpeedNumber number = iso.number.value_or(IsoSpeedNumber{});
           walker.whole(number.arithmetic);
           walker.leave();
           walk_field(walker, "degrees", number.degrees, kept, any);
           iso.number = number;
         }
       }},
  };
  return fields;
}

template <>
const Fields<ZoneDensity>& fields_of() {
  static const Fields<ZoneDensity> fields{
      field("zone", &ZoneDensity::zone, required),
      field("log_h", &ZoneDensity::log_h, required),
      field("net_density", &ZoneDensity::net_density),
  };
  return fields;
}

template <>
const Fields<ZonePlacement>& fields_of() {
  static const Fields<ZonePlacement> fields{
      {"zone_i_at", walk_zone_i},
      field("densities", &ZonePlacement::zones, required),
      field("density_range", &ZonePlacement::density_range),
      field("exposure_index", &ZonePlacement::exposure_index),
      field("exposure_index_by_meter", &ZonePlacement::exposure_index_by_meter),
  };
  return fields;
}

template <>
const Fields<ExposureScale>& fields_of() {
  static const Fields<ExposureScale> fields{
      field("log_h_absolute", &ExposureScale::absolute),
      field("metered_log_h", &ExposureScale::metered_log_h, left_out),
      field("metered_exposure_index", &ExposureScale::exposure_index, left_out),
  };
  return fields;
}

void walk_sensitometry(FieldWalker& walker, Known<Sensitometry>& sensitometry, double base) {
  if (!walker.enter("fitted_curve", null, sensitometry.has_value())) {
    walk_reason(walker, "fitted_curve", sensitometry);
    return;
  }
  if (!sensitometry) {
    sensitometry = Sensitometry{};
  }
  walk_value(walker, sensitometry->curve, any);
  walker.leave();
  walk_repeats(walker, sensitometry->curve, base);
  walk_fields(walker, sensitometry->scale);
  walk_fields(walker, sensitometry->readings);
  walk_field(walker, "useful_range_log_h", sensitometry->useful_range_log_h, null, any);
  walk_field(walker, "iso", sensitometry->iso, kept, any);
  walk_field(walker, "zones", sensitometry->placement, kept, any);
  walk_families(sensitometry->curve, walker);
  walk_field(walker, "residual_rms", sensitometry->curve.residual_rms, kept, not_negative);
}

}  // namespace fogline
