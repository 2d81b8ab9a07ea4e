#pragma once

namespace fogline {

/// A density that is spread normally from film to film.
struct UsualDensity {
  double density = 0.0;
  double sd = 0.0;

  bool operator==(const UsualDensity&) const = default;
};

/// A positive net density that is spread log-normally: median, standard deviation of its natural
/// logarithm.
struct UsualNet {
  double density = 0.0;
  double sd_share = 0.0;

  bool operator==(const UsualNet&) const = default;
};

/// What film shows in an uncalibrated scan before anything is known of the roll. Densities of edge
/// print, leader and pictures are above clear film. Shipped in `calibration/films.toml`, each table
/// with its source; a default one holds nothing.
struct FilmKnowledge {
  UsualNet edge_print;
  UsualNet leader;
  /// 98th percentile of a picture, of rolls as they come: well made or not.
  UsualNet highlight;
  /// What opaque areas read: stray light.
  UsualNet opaque;
  /// Base plus fog: film on grey base, film on clear base, and clear base's share of 135 film.
  UsualDensity grey_base;
  UsualDensity clear_base;
  double clear_base_share_135 = 0.0;
  /// No support is clearer.
  double least_support_density = 0.0;

  bool operator==(const FilmKnowledge&) const = default;
};

}  // namespace fogline
