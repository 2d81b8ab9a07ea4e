
#include <fogline/process/light_and_development.h>

#include <cmath>

namespace fogline {

namespace {

constexpr double zones_of_subject = 7.0;
/// Half width (95 %) of what enlargers differ in, as a share.
constexpr double condenser_share_95 = 0.06;
constexpr double seen_through_density = 2.0;
constexpr int white_zone = 9;

double zones_of(double contrast_index, double aim) {
  return zones_of_subject * (1.0 - aim / contrast_index);
}

}  // namespace

std::optional<CurveJudgement> judge_curve(const RollMeasurement& roll, const Aim& aim) {
  if (!roll.sensitometry) {
    return std::nullopt;
  }
  const Sensitometry& read = *roll.sensitometry;
  CurveJudgement judgement;
  judgement.zones = Unknown::no_curve_contrast;
  if (const auto& index = read.readings.contrast_index) {
    Quantity zones;
    zones.value = zones_of(index->value, aim.contrast_index);
    // Straight enough over the doubt of one curve.
    zones.u95 = zones_of_subject * aim.contrast_index * index->u95 / (index->value * index->value);
    judgement.zones = zones;
    const double off = index->value - aim.contrast_index;
    judgement.development = std::abs(off) <= aim.tolerance ? DevelopmentKind::normal
                            : off > 0.0                    ? DevelopmentKind::expanded
                                                           : DevelopmentKind::contracted;
  }
  judgement.diffusion_range = read.placement.density_range;
  if (judgement.diffusion_range) {
    const Quantity& range = *judgement.diffusion_range;
    judgement.condenser_range =
        Quantity{condenser_factor * range.value,
                 condenser_factor * std::hypot(range.u95, condenser_share_95 * range.value),
                 {},
                 {},
                 {},
                 false};
  } else {
    judgement.condenser_range = judgement.diffusion_range.why();
  }
  judgement.densest =
      read.placement.zones[static_cast<std::size_t>(white_zone - first_zone)].net_density;
  judgement.suits_scanning = judgement.densest
                                 ? Known<bool>(judgement.densest->value < seen_through_density)
                                 : Known<bool>(judgement.densest.why());
  return judgement;
}

int iso_range(double log_exposure_range) {
  constexpr double ranges_per_density = 100.0;
  constexpr double range_step = 10.0;
  return static_cast<int>(range_step *
                          std::round(log_exposure_range * ranges_per_density / range_step));
}

}  // namespace fogline
