#include "density/assign_steps.h"
#include "density/stray_light.h"
#include "film/wedges/find_wedges.h"
#include "roll/calibrating/scanner_response.h"
#include "roll/calibrating/shown_lights.h"
#include "roll/reading/scan_picture.h"
#include "roll/scan_knowledge.h"

#include <fogline/base/raster.h>
#include <fogline/base/refusal.h>
#include <fogline/roll/calibrate_scanner.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace fogline {

namespace {

/// Pixels of the working grid: a wedge's steps are large.
constexpr std::int64_t wedge_grid_pixels = 6'000'000;
/// Scale taken for stray light where the file doesn't tell it: the glass is so long.
constexpr double unknown_scale_length_mm = 240.0;
/// Own part of a step's certificate; the other half of the variance all steps share.
constexpr double own_part = std::numbers::sqrt2 / 2.0;
/// Bare light with more than this share at the top code is no zero.
constexpr double clipped_share_limit = 0.005;
/// The response is fitted, then stray light told by it, and again.
constexpr int rounds = 3;
/// Other wedges in the scan may go on by so many steps that can't be seen.
constexpr int unseen_slots = 2;

/// A wedge with the reference step of each of its own.
struct LaidWedge {
  FoundWedge wedge;
  StepAssignment assignment;
};

bool is_clipped(const WedgeStep& step) {
  return *std::max_element(step.clipped_share.begin(), step.clipped_share.end()) >
         clipped_share_limit;
}

bool bare_light_known(const FoundWedge& wedge) {
  return wedge.bare_light && wedge.bare_clipped_share <= clipped_share_limit;
}

LaidWedge lay_on_reference(const std::vector<FoundWedge>& wedges, const WedgeReference& reference,
                           const ScanInfo& info) {
  std::optional<Fact<Refusal>> failure;
  for (const FoundWedge& wedge : wedges) {
    const bool bare = bare_light_known(wedge);
    const double zero =
        visual_from_channels(bare ? *wedge.bare_light : wedge.steps.front().light, info.channels);
    std::vector<SeenStep> seen;
    for (const WedgeStep& step : wedge.steps) {
      const double through = visual_from_channels(step.light, info.channels) / zero;
      seen.push_back({step.slot, density_from_transmittance(through), is_clipped(step)});
    }
    StepAssignment assignment = assign_steps(
        seen, reference, {bare, wedge.bare_light.has_value(), wedge.unseen_dark_steps});
    if (!assignment.failure) {
      return {wedge, std::move(assignment)};
    }
    if (!failure) {
      failure = assignment.failure;
    }
  }
  throw FileError(info.file, failure.value());
}

const DeviceEvenness& evenness_of(const DeviceKnowledge& devices, ScannerDevice device) {
  return device == ScannerDevice::camera ? devices.camera_evenness : devices.scanner_evenness;
}

double own_density_doubt(const ReferenceStep& step, const WedgeReference& reference,
                         ScannerDevice device, const DeviceKnowledge& devices) {
  const double certificate = reference.nominal
                                 ? devices.calibrated.nominal_step_density
                                 : own_part * step.u95.value_or(usual_certificate_u95) / 1.96;
  return std::hypot(evenness_of(devices, device).wedge_density, certificate);
}

ResponseProblem problem_of(const LaidWedge& laid, const WedgeReference& reference,
                           const ScanSource& source, ScannerDevice device,
                           const DeviceKnowledge& devices) {
  const ScanInfo& info = source.info();
  const FoundWedge& wedge = laid.wedge;
  const bool bare = bare_light_known(wedge);
  ResponseProblem problem;
  problem.channels = info.channels;
  problem.callier = devices.angle.of(device).callier;
  if (bare) {
    const double evenness = 0.5 * evenness_of(devices, device).wedge_density;
    problem.bare =
        shown_light({wedge.bare_corners_px, *wedge.bare_light, {}, {}}, source, 0.0, evenness);
  }
  for (std::size_t i = 0; i < wedge.steps.size(); ++i) {
    const WedgeStep& step = wedge.steps[i];
    const auto index = static_cast<std::size_t>(laid.assignment.reference_index[i]);
    const ReferenceStep& known = reference.steps[index];
    ShownLight light =
        shown_light({step.corners_px, step.light, step.light_doubt, step.clipped_share}, source,
                    known.density, own_density_doubt(known, reference, device, devices));
    light.step.number = laid.assignment.reference_index[i] + 1;
    light.step.label = known.label;
    if (bare && info.transfer_known) {
      light.step.uncalibrated_density =
          density_from_transmittance(visual_from_channels(step.light, info.channels) /
                                     visual_from_channels(*wedge.bare_light, info.channels));
    }
    problem.lights.push_back(light);
  }
  return problem;
}

/// Outlines of all wedges in the scan; of the one that was laid on the reference with the steps
/// that weren't seen.
std::vector<std::vector<PointPx>> outlines_of(const std::vector<FoundWedge>& wedges,
                                              const LaidWedge& laid,
                                              const WedgeReference& reference) {
  std::vector<std::vector<PointPx>> outlines;
  for (const FoundWedge& wedge : wedges) {
    outlines.push_back(outline_of(wedge, unseen_slots, unseen_slots));
  }
  const int last = static_cast<int>(reference.steps.size()) - 1;
  outlines.push_back(outline_of(laid.wedge, laid.assignment.reference_index.front(),
                                last - laid.assignment.reference_index.back()));
  return outlines;
}

/// Stray light of the wedge's scan, by the present reading of its codes.
void tell_stray_light(ResponseProblem& problem, const ScanGrid& grid, const ScanInfo& info,
                      const std::vector<std::vector<PointPx>>& film_outlines) {
  StrayKnowledge known;
  known.film_outlines = film_outlines;
  const double longest = std::max(info.width_px, info.height_px);
  const StrayLight stray = StrayLight::estimated(
      grid, {}, info.tag_pixels_per_mm.value_or(longest / unknown_scale_length_mm), known);
  problem.stray = {stray.share(), stray.share_doubt(), stray.measured()};
  const auto add_field = [&](ShownLight& light, const PerChannel<double>& bare) {
    const PointPx at = middle_of(light.step.corners_px);
    for (int c = 0; c < info.channels; ++c) {
      const auto i = static_cast<std::size_t>(c);
      light.stray_field[i] = stray.field(at.x, at.y, c, bare[i]);
    }
  };
  // The bare light in the same reading: where it isn't in sight, that of the lightest usable step.
  const ShownLight& lightest = problem.bare ? *problem.bare : problem.lights.front();
  const PointPx at = middle_of(lightest.step.corners_px);
  const int x = std::clamp(static_cast<int>(at.x) / grid.reduction, 0, grid.light.width() - 1);
  const int y = std::clamp(static_cast<int>(at.y) / grid.reduction, 0, grid.light.height() - 1);
  PerChannel<double> bare{};
  for (int c = 0; c < info.channels; ++c) {
    bare[static_cast<std::size_t>(c)] =
        std::max(1e-6, static_cast<double>(grid.light.light(x, y, c)) /
                           transmittance_from_density(lightest.step.reference_density));
  }
  if (problem.bare) {
    add_field(*problem.bare, bare);
  }
  for (ShownLight& light : problem.lights) {
    add_field(light, bare);
  }
}

double common_certificate_doubt(const WedgeReference& reference) {
  if (reference.nominal) {
    return 0.0;
  }
  double sum = 0.0;
  for (const ReferenceStep& step : reference.steps) {
    sum += step.u95.value_or(usual_certificate_u95) / 1.96;
  }
  return own_part * sum / static_cast<double>(reference.steps.size());
}

}  // namespace

CalibrationRun calibrate_from_wedge(ScanSource& source, const WedgeReference& reference,
                                    ScannerDevice told_device, const ScanKnowledge& knowledge,
                                    const Progress& progress) {
  const ScanInfo info = source.info();
  const bool told = told_device != ScannerDevice::unknown;
  const ScannerDevice device = info.camera && !told ? ScannerDevice::camera : told_device;
  ScanGrid grid = source.survey({wedge_grid_pixels, {}, true}, progress);
  const WedgeSearch search = find_wedges(grid);
  if (search.wedges.empty()) {
    throw FileError(info.file, Refusal::no_wedge);
  }
  const LaidWedge laid = lay_on_reference(search.wedges, reference, info);
  ResponseProblem problem = problem_of(laid, reference, source, device, knowledge.devices);
  CalibrationRun run;
  run.pictures.push_back(scan_picture(grid));
  const std::vector<std::vector<PointPx>> film_outlines =
      outlines_of(search.wedges, laid, reference);
  for (int round = 0; round < rounds; ++round) {
    if (round > 0) {
      source.set_transfer(scanner_transfer(run.calibration));
      grid = source.survey({wedge_grid_pixels, {}, true}, {});
    }
    tell_stray_light(problem, grid, info, film_outlines);
    ResponseOutcome outcome = fit_response(problem);
    if (outcome.failure) {
      throw FileError(info.file, *outcome.failure);
    }
    run.calibration = std::move(outcome.calibration);
  }
  ScannerCalibration& calibration = run.calibration;
  calibration.method =
      reference.nominal ? CalibrationMethod::nominal_wedge : CalibrationMethod::wedge;
  calibration.slope_doubt_share =
      reference.nominal ? knowledge.devices.calibrated.nominal_slope_share : 0.0;
  calibration.certificate_doubt = common_certificate_doubt(reference);
  calibration.reference = reference.name;
  if (problem.bare) {
    calibration.bare_code = problem.bare->step.code;
  }
  add_settings(calibration, info, device);
  run.cautions = cautions_of(calibration);
  if (laid.assignment.counted_from_dark_end) {
    run.cautions.push_back({Severity::caution, fact_of(CautionKind::steps_counted_from_dark_end)});
  }
  if (laid.assignment.counted_from_light_end) {
    const auto drowned = static_cast<double>(reference.steps.size()) -
                         static_cast<double>(laid.assignment.reference_index.back()) - 1.0;
    run.cautions.push_back(
        {Severity::caution, fact_of(CautionKind::steps_counted_from_light_end, {drowned})});
  }
  run.film_outlines = film_outlines;
  source.set_transfer(scanner_transfer(calibration));
  return run;
}

}  // namespace fogline
