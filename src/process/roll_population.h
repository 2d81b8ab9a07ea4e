#pragma once

#include <array>

namespace fogline {

/// How home-developed rolls and their subjects vary, before one has been looked at. Shipped in
/// `calibration/roll_population.toml`, with what devices and films do from `devices.toml` and
/// `films.toml`; each table there names its source, and what a value means stands beside it too.
/// Densities are net of base plus fog and diffuse unless said otherwise. A default one holds
/// nothing.
///
/// A logbook that knows more of a film label narrows it: its edge print's density and scatter go
/// in for those of all stocks.
struct RollPopulation {
  /// Standard deviation of a roll's exposure error, stops.
  double exposure_sd_stops = 0.0;
  /// Exposure within this of the usual placement isn't called wrong, stops.
  double exposure_latitude_stops = 0.0;
  /// Standard deviation of a roll's contrast about its aim, share (of the natural logarithm).
  double contrast_sd_share = 0.0;
  /// Contrast index at which the usual densities below hold.
  double usual_contrast_index = 0.0;
  /// Shadows gain with development: log10 exposure a unit of ln(contrast).
  double speed_log_h_per_ln_contrast = 0.0;

  /// 2nd and 98th percentile of a usual picture, usually exposed and developed.
  double shadow_density = 0.0;
  double highlight_density = 0.0;
  /// Half widths of what is usual about them.
  double shadow_half_density = 0.0;
  double highlight_half_density = 0.0;
  /// How the placing of the metered tone and the range of log exposure vary from roll to roll
  /// (weather, habit) and, on top, from frame to frame, stops.
  double placement_roll_sd_stops = 0.0;
  double range_roll_sd_stops = 0.0;
  double placement_frame_sd_stops = 0.0;
  double range_frame_sd_stops = 0.0;
  /// Where in the range from shadow to highlight the tone lies that a meter holds.
  double meter_pivot_share = 0.0;

  /// Toes of the usual curve, density over which they bend, from a straight line's short one to a
  /// long one whose slope rises to the highlights; and its maximum densities: each as likely.
  std::array<double, 3> toe_densities{};
  std::array<double, 3> maximum_densities{};
  /// Middle tone, at which the effects of light and time are compared.
  double middle_density = 0.0;

  double edge_print_density = 0.0;
  double edge_print_sd_share = 0.0;
  /// Denser edge print tells nothing of development.
  double greatest_edge_print_density = 0.0;
  double leader_sd_share = 0.0;
  /// A thinner leader is grey.
  double black_leader_density = 0.0;
  /// What an exhausted developer leaves of the leader, and its share among under-developed rolls.
  double weak_leader_density = 0.0;
  double weak_leader_sd_density = 0.0;
  double weak_share = 0.0;

  /// Noise of the readings, density; and of the film's own curve about the usual one, share.
  double shadow_reading_sd = 0.0;
  double highlight_reading_sd = 0.0;
  double curve_sd_share = 0.0;
  /// How much denser than diffuse light an uncalibrated device reads silver, and the doubt of it.
  double camera_factor = 0.0;
  double camera_sd_share = 0.0;
  double scanner_factor = 0.0;
  double scanner_sd_share = 0.0;
  /// What is left of that doubt where the kind of device was told and its factor taken out.
  double told_camera_sd_share = 0.0;
  double told_flatbed_sd_share = 0.0;
  double told_film_scanner_sd_share = 0.0;
  double told_curve_sd_share = 0.0;
  double assumed_curve_sd_share = 0.0;
  double finished_picture_curve_sd_share = 0.0;
  double guessed_curve_sd_share = 0.0;

  /// Base plus fog above the bare light, and how often film is fogged, by how much.
  double grey_base_density = 0.0;
  double grey_base_sd = 0.0;
  double clear_base_density = 0.0;
  double clear_base_sd = 0.0;
  double clear_base_share_135 = 0.0;
  /// Visual density of clear colour negative film, whose mask a grey scan can't tell from fog, and
  /// how often such film is taken for black-and-white.
  double mask_share = 0.0;
  double mask_density = 0.0;
  double mask_sd = 0.0;
  /// Share of 135 film among film of unknown format.
  double share_135_of_unknown = 0.0;
  double fogged_share = 0.0;
  double least_fog_density = 0.0;
  double greatest_fog_density = 0.0;
  double undeveloped_less_density = 0.0;

  bool operator==(const RollPopulation&) const = default;
};

}  // namespace fogline
