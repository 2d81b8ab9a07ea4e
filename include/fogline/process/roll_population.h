#pragma once

#include <array>

namespace fogline {

/// How home-developed rolls and their subjects vary, before one has been looked at. Shipped in
/// `calibration/roll_population.toml`, where each table names its source; what a value means stands
/// beside it there too. Densities are net of base plus fog and diffuse unless said otherwise. The
/// defaults are the shipped values.
///
/// A logbook that knows more of a film label narrows it: its edge print's density and scatter go
/// in for those of all stocks.
struct RollPopulation {
  /// Standard deviation of a roll's exposure error, stops.
  double exposure_sd_stops = 1.0;
  /// Exposure within this of the usual placement isn't called wrong, stops.
  double exposure_latitude_stops = 0.667;
  /// Standard deviation of a roll's contrast about its aim, share (of the natural logarithm).
  double contrast_sd_share = 0.2;
  /// Contrast index at which the usual densities below hold.
  double usual_contrast_index = 0.58;
  /// Shadows gain with development: log10 exposure a unit of ln(contrast).
  double speed_log_h_per_ln_contrast = 0.10;

  /// 2nd and 98th percentile of a usual picture, usually exposed and developed.
  double shadow_density = 0.28;
  double highlight_density = 1.22;
  /// How the placing of the metered tone and the range of log exposure vary from roll to roll
  /// (weather, habit) and, on top, from frame to frame, stops.
  double placement_roll_sd_stops = 0.45;
  double range_roll_sd_stops = 0.55;
  double placement_frame_sd_stops = 0.65;
  double range_frame_sd_stops = 1.2;
  /// Where in the range from shadow to highlight the tone lies that a meter holds.
  double meter_pivot_share = 0.63;

  /// Toes of the usual curve, density over which they bend, from a straight line's short one to a
  /// long one whose slope rises to the highlights; and its maximum densities: each as likely.
  std::array<double, 3> toe_densities{0.08, 0.17, 0.45};
  std::array<double, 3> maximum_densities{2.2, 2.7, 3.3};
  /// Middle tone, at which the effects of light and time are compared.
  double middle_density = 0.70;

  double edge_print_density = 1.0;
  double edge_print_sd_share = 0.30;
  /// Denser edge print tells nothing of development.
  double greatest_edge_print_density = 1.6;
  double leader_sd_share = 0.30;
  /// What an exhausted developer leaves of the leader, and its share among under-developed rolls.
  double weak_leader_density = 1.5;
  double weak_leader_sd_density = 0.25;
  double weak_share = 0.15;

  /// Noise of the readings, density; and of the film's own curve about the usual one, share.
  double shadow_reading_sd = 0.03;
  double highlight_reading_sd = 0.05;
  double curve_sd_share = 0.04;
  /// How much denser than diffuse light an uncalibrated device reads silver, and the doubt of it.
  double camera_factor = 1.025;
  double camera_sd_share = 0.02;
  double scanner_factor = 1.12;
  double scanner_sd_share = 0.08;
  double told_curve_sd_share = 0.02;
  double assumed_curve_sd_share = 0.05;
  double assumed_camera_curve_sd_share = 0.10;

  /// Base plus fog above the bare light, and how often film is fogged, by how much.
  double grey_base_density = 0.29;
  double grey_base_sd = 0.055;
  double clear_base_density = 0.14;
  double clear_base_sd = 0.045;
  double clear_base_share_135 = 0.12;
  double fogged_share = 0.05;
  double least_fog_density = 0.15;
  double greatest_fog_density = 2.0;
  double undeveloped_less_density = 0.04;
};

}  // namespace fogline
