#include "roll/target/read_target.h"

#include <algorithm>

namespace fogline {

namespace {

ContrastMethod method_of(const ExposureTarget& target) {
  if (target.wedge) {
    return ContrastMethod::wedge;
  }
  return target.bracket ? ContrastMethod::bracket : ContrastMethod::marked_areas;
}

ContrastEstimate contrast_of(const Sensitometry& read, ContrastMethod method) {
  ContrastEstimate contrast;
  contrast.method = method;
  contrast.contrast_index = read.readings.contrast_index;
  contrast.density_range = read.placement.density_range;
  return contrast;
}

/// Where all exposures may be shifted together, nothing that counts from them is told.
void forget_places(Sensitometry& read, const WhyUnknown& why) {
  const auto forget = [&](CurveReading& reading) { reading = why; };
  forget(read.readings.speed_point_log_h);
  forget(read.readings.fractional_gradient_log_h);
  forget(read.readings.delta_x_log_h);
  forget(read.iso.speed);
  forget(read.iso.effective_speed);
  read.iso.number.reset();
  if (!read.placement.metered) {
    return;
  }
  forget(read.placement.exposure_index);
  forget(read.placement.exposure_index_by_meter);
  forget(read.placement.density_range);
  for (ZoneDensity& zone : read.placement.zones) {
    forget(zone.net_density);
  }
}

/// The steps with what the curve left out told at each.
std::vector<TargetSteps::Place> told_steps(const TargetSteps& steps,
                                           const CharacteristicCurve& curve) {
  std::vector<TargetSteps::Place> places = steps.places;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const ExposedStep& exposed = steps.exposed.steps[i];
    const auto same =
        std::find_if(curve.steps.begin(), curve.steps.end(), [&](const ExposedStep& step) {
          return step.label == exposed.label && step.log_h == exposed.log_h;
        });
    if (same != curve.steps.end() && same->left_out) {
      StepMeasurement& step = places[i].step;
      step.outlier = !step.left_out;
      step.left_out = same->left_out;
    }
  }
  return places;
}

/// The steps' curve and what is read from it.
Known<Sensitometry> read_steps(const TargetSteps& steps, const ExposureTarget& target) {
  if (steps.failure) {
    return *steps.failure;
  }
  const Known<FittedCurve> curve = fit_characteristic_curve(steps.exposed);
  if (!curve) {
    return curve.why();
  }
  ExposureScale scale;
  scale.absolute = target.wedge && target.wedge->h_at_zero_lux_s;
  if (!target.wedge) {
    scale.metered_log_h = 0.0;
    scale.exposure_index = target.exposure_index;
  }
  Sensitometry read = read_sensitometry(*curve, scale);
  if (steps.place_doubt) {
    forget_places(read, *steps.place_doubt);
  }
  return read;
}

}  // namespace

TargetReading read_target(const std::vector<ScanReading>& scans, const ExposureTarget& target) {
  const TargetSteps steps =
      target.wedge ? wedge_steps(scans, *target.wedge) : metered_steps(scans, target);
  TargetReading reading;
  reading.frames = steps.frames;
  reading.cautions = steps.cautions;
  reading.sensitometry = read_steps(steps, target);
  if (reading.sensitometry) {
    reading.steps = told_steps(steps, reading.sensitometry->curve);
    reading.contrast = contrast_of(*reading.sensitometry, method_of(target));
  } else {
    reading.steps = steps.places;
    reading.cautions.push_back(
        {Severity::caution, fact_of(CautionKind::target_unread), reading.sensitometry.why()});
  }
  return reading;
}

}  // namespace fogline
