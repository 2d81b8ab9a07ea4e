#include "roll/target/read_target.h"

#include "roll/target/target_steps.h"

#include <algorithm>
#include <utility>

namespace fogline {

namespace {

/// Numbers in a printed scan's steps: least exposed first within each role.
void number_steps(RollMeasurement& roll) {
  for (ScanMeasurement& scan : roll.scans) {
    std::stable_sort(scan.steps.begin(), scan.steps.end(),
                     [](const StepMeasurement& a, const StepMeasurement& b) {
                       return a.role != b.role ? a.role < b.role
                                               : a.log_h.value_or(0.0) < b.log_h.value_or(0.0);
                     });
    int number = 0;
    const StepRole* role = nullptr;
    for (StepMeasurement& step : scan.steps) {
      if (step.role == StepRole::scanner_wedge) {
        continue;
      }
      number = role != nullptr && *role == step.role ? number + 1 : 1;
      role = &step.role;
      step.number = number;
    }
  }
}

ContrastMethod method_of(const ExposureTarget& target) {
  if (target.wedge) {
    return ContrastMethod::wedge;
  }
  return target.bracket ? ContrastMethod::bracket : ContrastMethod::marked_areas;
}

void tell_contrast(RollMeasurement& roll, ContrastMethod method) {
  const Sensitometry& read = *roll.sensitometry;
  ContrastEstimate& contrast = roll.contrast;
  contrast = {};
  contrast.method = method;
  contrast.contrast_index = read.readings.contrast_index;
  contrast.density_range = read.placement.density_range;
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

/// What the curve left out is told at the steps too.
void tell_left_out(RollMeasurement& roll, const TargetSteps& steps) {
  for (std::size_t i = 0; i < steps.origins.size(); ++i) {
    const std::string& label = steps.exposed.steps[i].label;
    const auto& fitted = roll.sensitometry->curve.steps;
    const auto same = std::find_if(fitted.begin(), fitted.end(), [&](const ExposedStep& step) {
      return step.label == label && step.log_h == steps.exposed.steps[i].log_h;
    });
    if (same != fitted.end() && same->left_out) {
      StepMeasurement& step = roll.scans[steps.origins[i].scan].steps[steps.origins[i].step];
      step.outlier = !step.left_out;
      step.left_out = same->left_out;
    }
  }
}

/// The steps' curve and what is read from it.
Known<Sensitometry> read_steps(const TargetSteps& steps, const ExposureTarget& target) {
  if (steps.failure) {
    return *steps.failure;
  }
  Known<CharacteristicCurve> curve = fit_characteristic_curve(steps.exposed);
  if (!curve) {
    return curve.why();
  }
  ExposureScale scale;
  scale.absolute = target.wedge && target.wedge->h_at_zero_lux_s;
  if (!target.wedge) {
    scale.metered_log_h = 0.0;
    scale.exposure_index = target.exposure_index;
  }
  Sensitometry read = read_sensitometry(std::move(*curve), scale);
  if (steps.place_doubt) {
    forget_places(read, *steps.place_doubt);
  }
  return read;
}

}  // namespace

void read_target(RollMeasurement& roll, const ExposureTarget& target) {
  const TargetSteps steps =
      target.wedge ? wedge_steps(roll, *target.wedge) : metered_steps(roll, target);
  roll.target_cautions = steps.cautions;
  roll.sensitometry = read_steps(steps, target);
  if (roll.sensitometry) {
    tell_left_out(roll, steps);
    tell_contrast(roll, method_of(target));
  } else {
    roll.target_cautions.push_back(
        {Severity::caution, fact_of(CautionKind::target_unread), roll.sensitometry.why()});
  }
  number_steps(roll);
}

}  // namespace fogline
