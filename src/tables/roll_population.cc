#include "tables/roll_population.h"

#include "tables/calibration_text.h"

#include <stdexcept>
#include <string>

#include <toml++/toml.h>

namespace fogline {

namespace {

/// Reads numbers of the shipped file; a missing one is a fault of the build, not of the user.
class ShippedTable {
 public:
  explicit ShippedTable(const toml::table& whole) : whole_(whole) {}

  [[nodiscard]] double number(const char* table, const char* key) const {
    return as_number(whole_[table][key].value<double>(), table, key);
  }

  template <std::size_t size>
  [[nodiscard]] std::array<double, size> numbers(const char* table, const char* key) const {
    std::array<double, size> values{};
    for (std::size_t i = 0; i < size; ++i) {
      values[i] = as_number(whole_[table][key][i].value<double>(), table, key);
    }
    return values;
  }

 private:
  static double as_number(const std::optional<double>& value, const char* table, const char* key) {
    if (!value) {
      throw std::logic_error(std::string("roll_population.toml lacks ") + table + "." + key);
    }
    return *value;
  }

  const toml::table& whole_;
};

void read_rolls(const ShippedTable& shipped, RollPopulation& population) {
  population.exposure_sd_stops = shipped.number("exposure", "sd_stops");
  population.exposure_latitude_stops = shipped.number("exposure", "latitude_stops");
  population.contrast_sd_share = shipped.number("development", "contrast_sd_share");
  population.usual_contrast_index = shipped.number("development", "usual_contrast_index");
  population.speed_log_h_per_ln_contrast =
      shipped.number("development", "speed_log_h_per_ln_contrast");
  population.shadow_density = shipped.number("subjects", "shadow_density");
  population.highlight_density = shipped.number("subjects", "highlight_density");
  population.placement_roll_sd_stops = shipped.number("subjects", "placement_roll_sd_stops");
  population.range_roll_sd_stops = shipped.number("subjects", "range_roll_sd_stops");
  population.placement_frame_sd_stops = shipped.number("subjects", "placement_frame_sd_stops");
  population.range_frame_sd_stops = shipped.number("subjects", "range_frame_sd_stops");
  population.meter_pivot_share = shipped.number("subjects", "meter_pivot_share");
  population.toe_densities = shipped.numbers<3>("curve", "toe_densities");
  population.maximum_densities = shipped.numbers<3>("curve", "maximum_densities");
  population.middle_density = shipped.number("curve", "middle_density");
}

void read_patches(const ShippedTable& shipped, RollPopulation& population) {
  population.edge_print_density = shipped.number("edge_print", "density");
  population.edge_print_sd_share = shipped.number("edge_print", "sd_share");
  population.greatest_edge_print_density = shipped.number("edge_print", "greatest_density");
  population.leader_sd_share = shipped.number("leader", "sd_share");
  population.weak_leader_density = shipped.number("leader", "weak_density");
  population.weak_leader_sd_density = shipped.number("leader", "weak_sd_density");
  population.weak_share = shipped.number("leader", "weak_share");
  population.grey_base_density = shipped.number("base_fog", "grey_base_density");
  population.grey_base_sd = shipped.number("base_fog", "grey_base_sd");
  population.clear_base_density = shipped.number("base_fog", "clear_base_density");
  population.clear_base_sd = shipped.number("base_fog", "clear_base_sd");
  population.clear_base_share_135 = shipped.number("base_fog", "clear_base_share_135");
  population.fogged_share = shipped.number("base_fog", "fogged_share");
  population.least_fog_density = shipped.number("base_fog", "least_fog_density");
  population.greatest_fog_density = shipped.number("base_fog", "greatest_fog_density");
  population.undeveloped_less_density = shipped.number("base_fog", "undeveloped_less_density");
}

void read_doubts(const ShippedTable& shipped, RollPopulation& population) {
  population.shadow_reading_sd = shipped.number("reading", "shadow_sd");
  population.highlight_reading_sd = shipped.number("reading", "highlight_sd");
  population.curve_sd_share = shipped.number("reading", "curve_sd_share");
  population.camera_factor = shipped.number("angle_of_light", "camera_factor");
  population.camera_sd_share = shipped.number("angle_of_light", "camera_sd_share");
  population.scanner_factor = shipped.number("angle_of_light", "scanner_factor");
  population.scanner_sd_share = shipped.number("angle_of_light", "scanner_sd_share");
  population.told_curve_sd_share = shipped.number("tone_curve", "told_sd_share");
  population.assumed_curve_sd_share = shipped.number("tone_curve", "assumed_sd_share");
  population.assumed_camera_curve_sd_share =
      shipped.number("tone_curve", "assumed_camera_sd_share");
}

}  // namespace

RollPopulation roll_population_from_calibration() {
  const toml::table whole = toml::parse(calibration_text("roll_population.toml"));
  const ShippedTable shipped(whole);
  RollPopulation population;
  read_rolls(shipped, population);
  read_patches(shipped, population);
  read_doubts(shipped, population);
  return population;
}

}  // namespace fogline
