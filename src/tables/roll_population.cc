#include "tables/roll_population.h"

#include "tables/scan_tables.h"

#include <fogline/base/quantity.h>

#include <algorithm>

namespace fogline {

namespace {

void read_development(const KnowledgeTable& rolls, RollPopulation& population) {
  const KnowledgeTable exposure = rolls.table("exposure");
  population.exposure_sd_stops = exposure.number("sd_stops", any_stops);
  population.exposure_latitude_stops = exposure.number("latitude_stops", any_stops);
  const KnowledgeTable development = rolls.table("development");
  population.contrast_sd_share = development.number("contrast_sd_share", any_share);
  population.usual_contrast_index = development.number("usual_contrast_index", any_factor);
  population.speed_log_h_per_ln_contrast =
      development.number("speed_log_h_per_ln_contrast", any_log_h);
  const KnowledgeTable reading = rolls.table("reading");
  population.shadow_reading_sd = reading.number("shadow_sd", any_density);
  population.highlight_reading_sd = reading.number("highlight_sd", any_density);
  population.curve_sd_share = reading.number("curve_sd_share", any_share);
}

void read_subjects(const KnowledgeTable& rolls, RollPopulation& population) {
  const KnowledgeTable subjects = rolls.table("subjects");
  population.shadow_density = subjects.number("shadow_density", any_density);
  population.highlight_density = subjects.number("highlight_density", any_density);
  population.placement_roll_sd_stops = subjects.number("placement_roll_sd_stops", any_stops);
  population.range_roll_sd_stops = subjects.number("range_roll_sd_stops", any_stops);
  population.placement_frame_sd_stops = subjects.number("placement_frame_sd_stops", any_stops);
  population.range_frame_sd_stops = subjects.number("range_frame_sd_stops", any_stops);
  population.meter_pivot_share = subjects.number("meter_pivot_share", any_share);
  const KnowledgeTable usual = rolls.table("usual_picture");
  population.shadow_half_density = usual.number("shadow_half_density", any_density);
  population.highlight_half_density = usual.number("highlight_half_density", any_density);
  const KnowledgeTable curve = rolls.table("curve");
  const auto three = [&](const char* key, std::array<double, 3>& values) {
    const std::vector<double> read = curve.numbers(key, any_density, values.size());
    std::copy(read.begin(), read.end(), values.begin());
  };
  three("toe_densities", population.toe_densities);
  three("maximum_densities", population.maximum_densities);
  population.middle_density = curve.number("middle_density", any_density);
}

void read_films(const KnowledgeTable& films, RollPopulation& population) {
  const KnowledgeTable print = films.table("edge_print");
  population.edge_print_density = print.number("density", any_density);
  population.edge_print_sd_share = print.number("sd_share", any_share);
  population.greatest_edge_print_density = print.number("greatest_density", any_density);
  const KnowledgeTable leader = films.table("leader");
  population.leader_sd_share = leader.number("sd_share", any_share);
  population.black_leader_density = leader.number("black_density", any_density);
  population.weak_leader_density = leader.number("weak_density", any_density);
  population.weak_leader_sd_density = leader.number("weak_sd_density", any_density);
  population.weak_share = leader.number("weak_share", any_share);
  const KnowledgeTable base = films.table("base_fog");
  population.grey_base_density = base.number("grey_base_density", any_density);
  population.grey_base_sd = base.number("grey_base_sd", any_density);
  population.clear_base_density = base.number("clear_base_density", any_density);
  population.clear_base_sd = base.number("clear_base_sd", any_density);
  population.clear_base_share_135 = base.number("clear_base_share_135", any_share);
  const KnowledgeTable mask = films.table("colour_mask");
  population.mask_share = mask.number("share", any_share);
  population.mask_density = mask.number("density", any_density);
  population.mask_sd = mask.number("sd", any_density);
  population.share_135_of_unknown = base.number("share_135_of_unknown", any_share);
  population.fogged_share = base.number("fogged_share", any_share);
  population.least_fog_density = base.number("least_fog_density", any_density);
  population.greatest_fog_density = base.number("greatest_fog_density", any_density);
  population.undeveloped_less_density = base.number("undeveloped_less_density", any_density);
}

void read_devices(const KnowledgeTable& devices, RollPopulation& population) {
  const KnowledgeTable angle = devices.table("expected_angle");
  population.camera_factor = angle.number("camera_factor", any_callier);
  population.camera_sd_share = angle.number("camera_sd_share", any_share);
  population.scanner_factor = angle.number("scanner_factor", any_callier);
  population.scanner_sd_share = angle.number("scanner_sd_share", any_share);
  const ByDevice<AngleOfLight> kinds = devices_from(devices).angle;
  population.told_camera_sd_share = kinds.camera.told_share_95 / coverage_factor_95;
  population.told_flatbed_sd_share = kinds.flatbed.told_share_95 / coverage_factor_95;
  population.told_film_scanner_sd_share = kinds.film_scanner.told_share_95 / coverage_factor_95;
  const KnowledgeTable curve = devices.table("tone_curve");
  population.told_curve_sd_share = curve.number("told_share", any_share);
  population.assumed_curve_sd_share = curve.number("assumed_share", any_share);
  population.finished_picture_curve_sd_share = curve.number("finished_picture_share", any_share);
  population.guessed_curve_sd_share = curve.number("guessed_share", any_share);
}

}  // namespace

RollPopulation roll_population_from(const KnowledgeTable& rolls, const KnowledgeTable& devices,
                                    const KnowledgeTable& films) {
  RollPopulation population;
  read_development(rolls, population);
  read_subjects(rolls, population);
  read_films(films, population);
  read_devices(devices, population);
  return population;
}

}  // namespace fogline
