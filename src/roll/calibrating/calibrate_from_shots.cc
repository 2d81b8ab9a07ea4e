#include "density/stray_light.h"
#include "film/wedges/find_wedges.h"
#include "roll/calibrating/scanner_response.h"
#include "roll/calibrating/shown_lights.h"
#include "roll/reading/scan_picture.h"
#include "roll/scan_knowledge.h"

#include <fogline/base/refusal.h>
#include <fogline/roll/calibrate_scanner.h>

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// A target or layer fills the picture: few pixels do.
constexpr std::int64_t shot_grid_pixels = 1'000'000;
ScanInfo common_info(const std::vector<ScanSource*>& sources) {
  const ScanInfo& first = sources.front()->info();
  for (const ScanSource* source : sources) {
    const ScanInfo& info = source->info();
    if (info.bits != first.bits || info.channels != first.channels) {
      throw FileError(info.file, Refusal::shots_differ, {}, {first.file});
    }
  }
  return first;
}

std::vector<EvenArea> areas_of(const std::vector<ScanSource*>& sources, std::size_t wanted,
                               CalibrationRun& run, const Progress& progress) {
  std::vector<EvenArea> areas;
  for (std::size_t i = 0; i < sources.size(); ++i) {
    const ScanGrid grid = sources[i]->survey({shot_grid_pixels}, progress);
    run.pictures.push_back(scan_picture(grid));
    if (sources.size() > 1) {
      areas.push_back(middle_of(grid));
      continue;
    }
    const WedgeSearch search = find_wedges(grid);
    const ScanInfo& info = sources[i]->info();
    if (search.wedges.empty()) {
      throw FileError(info.file, Refusal::no_wedge);
    }
    for (const WedgeStep& step : search.wedges.front().steps) {
      areas.push_back({step.corners_px, step.light, step.light_doubt, step.clipped_share});
    }
    if (areas.size() + 1 == wanted && search.wedges.front().bare_light) {
      const FoundWedge& wedge = search.wedges.front();
      areas.insert(areas.begin(), {wedge.bare_corners_px, *wedge.bare_light, {}, {}});
    }
  }
  if (areas.size() != wanted) {
    throw FileError(sources.front()->info().file, Refusal::areas_not_as_named,
                    {static_cast<double>(areas.size()), static_cast<double>(wanted)});
  }
  return areas;
}

void fit(CalibrationRun& run, const ResponseProblem& problem, const ScanInfo& info) {
  ResponseOutcome outcome = fit_response(problem);
  if (outcome.failure) {
    throw FileError(info.file, *outcome.failure);
  }
  run.calibration = std::move(outcome.calibration);
}

/// Every picture is lit by what its target lets through, so stray light is in proportion and only
/// scales the light: its field is the light itself.
void add_proportional_stray(ShownLight& light) {
  light.stray_field.fill(even_field(transmittance_from_density(light.step.reference_density)));
}

double declared_density(const EvenArea& area, const EvenArea& brightest, int channels) {
  return density_from_transmittance(visual_from_channels(area.light, channels) /
                                    visual_from_channels(brightest.light, channels));
}

/// Density of one layer by the file's own transfer: the slope through all that aren't clipped.
double declared_layer(const std::vector<EvenArea>& areas, const std::vector<int>& layers,
                      const ScanSource& source) {
  const int channels = source.info().channels;
  std::vector<std::size_t> usable;
  for (std::size_t i = 0; i < areas.size(); ++i) {
    if (!shown_light(areas[i], source, 0.0, 0.0).step.left_out) {
      usable.push_back(i);
    }
  }
  if (usable.size() < 2) {
    return 0.0;
  }
  const std::size_t first = usable.front();
  const std::size_t last = usable.back();
  return declared_density(areas[last], areas[first], channels) / (layers[last] - layers[first]);
}

}  // namespace

CalibrationRun calibrate_from_layers(const std::vector<ScanSource*>& sources,
                                     const std::vector<int>& layers,
                                     std::optional<double> layer_density, ScannerDevice device,
                                     const ScanKnowledge& knowledge, const Progress& progress) {
  const ScanInfo info = common_info(sources);
  CalibrationRun run;
  const std::vector<EvenArea> areas = areas_of(sources, layers.size(), run, progress);
  const double each = layer_density.value_or(declared_layer(areas, layers, *sources.front()));
  ResponseProblem problem;
  problem.channels = info.channels;
  problem.stray = {0.0, 0.0, false};
  for (std::size_t i = 0; i < areas.size(); ++i) {
    const ScanSource& source = *sources[sources.size() > 1 ? i : 0];
    ShownLight light = shown_light(
        areas[i], source, each * layers[i],
        knowledge.devices.calibrated.layer_density * std::sqrt(static_cast<double>(layers[i])));
    light.step.number = layers[i];
    light.step.label = std::to_string(layers[i]);
    light.step.uncalibrated_density = declared_density(areas[i], areas.front(), info.channels);
    add_proportional_stray(light);
    if (layers[i] == 0 && !light.step.left_out) {
      problem.bare = light;
    } else {
      problem.lights.push_back(light);
    }
  }
  std::stable_sort(problem.lights.begin(), problem.lights.end(),
                   [](const ShownLight& a, const ShownLight& b) {
                     return a.step.reference_density < b.step.reference_density;
                   });
  fit(run, problem, info);
  run.calibration.method = CalibrationMethod::layers;
  run.calibration.shape_only = !layer_density;
  run.calibration.slope_doubt_share = layer_density
                                          ? knowledge.devices.calibrated.layer_share
                                          : knowledge.devices.calibrated.unknown_scale_share;
  run.calibration.reference = "layers";
  if (problem.bare) {
    run.calibration.bare_code = problem.bare->step.code;
  }
  for (const ScanSource* source : sources) {
    add_settings(run.calibration, source->info(), device);
  }
  run.cautions = cautions_of(run.calibration);
  return run;
}

CalibrationRun calibrate_from_bracket(const std::vector<ScanSource*>& sources,
                                      const std::vector<double>& times_s, double doubt_stops,
                                      ScannerDevice device, const Progress& progress) {
  const ScanInfo info = common_info(sources);
  CalibrationRun run;
  const std::vector<EvenArea> areas = areas_of(sources, times_s.size(), run, progress);
  // Density 0 is the longest time that doesn't clip.
  double longest_s = 0.0;
  std::vector<ShownLight> shots;
  for (std::size_t i = 0; i < areas.size(); ++i) {
    ShownLight shot = shown_light(areas[i], *sources[i], 0.0, doubt_stops * std::log10(2.0) / 1.96);
    shot.step.number = static_cast<int>(i) + 1;
    shot.step.label = sources[i]->info().file;
    if (!shot.step.left_out) {
      longest_s = std::max(longest_s, times_s[i]);
    }
    shots.push_back(std::move(shot));
  }
  ResponseProblem problem;
  problem.channels = info.channels;
  problem.stray = {0.0, 0.0, false};
  for (std::size_t i = 0; i < shots.size(); ++i) {
    ShownLight light = shots[i];
    light.step.reference_density = std::log10(std::max(longest_s, times_s[i]) / times_s[i]);
    add_proportional_stray(light);
    problem.lights.push_back(light);
  }
  std::stable_sort(problem.lights.begin(), problem.lights.end(),
                   [](const ShownLight& a, const ShownLight& b) {
                     return a.step.reference_density < b.step.reference_density;
                   });
  fit(run, problem, info);
  run.calibration.method = CalibrationMethod::bracket;
  run.calibration.reference = "shutter times";
  for (const ScanSource* source : sources) {
    add_settings(run.calibration, source->info(), device);
  }
  run.cautions = cautions_of(run.calibration);
  return run;
}

}  // namespace fogline
