#pragma once

#include "film/film_layout.h"

#include <fogline/base/quantity.h>
#include <fogline/base/raster.h>
#include <fogline/base/scan_source.h>
#include <fogline/density/doubt.h>

#include <array>
#include <optional>
#include <tuple>
#include <vector>

namespace fogline {

/// What is known of stray light before a scan is looked at.
struct StrayKnowledge {
  /// Share of an evenly lit field and its standard uncertainty, for scans that show nothing opaque:
  /// unknown scanners have 0.3 to 3 % (common practice, no source).
  double share = 0.010;
  double share_doubt = 0.007;
  /// A calibration told it: then it goes before what opaque areas say where it is surer.
  bool calibrated = false;
  /// Outlines of film that is no strip (a wedge), stored pixels: never taken for opaque.
  std::vector<std::vector<PointPx>> film_outlines;
};

/// Light that reaches the sensor without having passed the film where it was seen: black offset and
/// veiling glare. Both add to the light of every pixel and flatten dense film.
///
/// Glare is modelled as a broad blur of the whole lit field, L_seen = (1 - a) L + a (K * L) + b,
/// with K a sum of Gaussians from 2.5 to 40 mm, round and drawn out along either axis (scanners
/// that light a moving stripe glare along the sensor line), its weights found by non-negative least
/// squares where the scan shows opaque areas near to and far from bright ones. Where nothing opaque
/// is in sight a usual share is taken away and most of it stays as doubt.
class StrayLight {
 public:
  /// `pixels_per_mm` of the stored image; a coarse guess does, the widths follow it. What lies on a
  /// strip is never taken for opaque, however dense.
  static StrayLight estimated(const ScanGrid& grid, const std::vector<FilmStrip>& strips,
                              double pixels_per_mm, const StrayKnowledge& known = {});

  /// Stray light at a place of the stored image, per channel, in units of light.
  [[nodiscard]] float at(double x_px, double y_px, int channel) const;
  /// Standard uncertainty of the same.
  [[nodiscard]] double doubt(double x_px, double y_px) const;
  /// Surroundings of a place, per channel or visual, where bare light is `bare_light` bright. Where
  /// opaque areas told how far glare reaches, all three parts are alike.
  [[nodiscard]] StrayField field(double x_px, double y_px, int channel, double bare_light) const;
  [[nodiscard]] StrayField visual_field(double x_px, double y_px, double bare_light) const;
  /// Sum of the glare weights: stray light as a share of an evenly lit field.
  [[nodiscard]] double share() const { return share_; }
  [[nodiscard]] double share_doubt() const { return share_doubt_; }
  /// Black offset in units of light.
  [[nodiscard]] double offset() const { return offset_; }
  /// Median light of the opaque areas in sight; absent where there are none.
  [[nodiscard]] std::optional<double> opaque_light() const { return opaque_light_; }
  /// True where opaque areas told it; false where it is the usual share.
  [[nodiscard]] bool measured() const { return measured_; }

 private:
  [[nodiscard]] float interpolated(const Raster<float>& cells, double x_px, double y_px,
                                   int channel) const;

  Raster<float> glare_;
  std::array<Raster<float>, std::tuple_size_v<StrayField>> fields_;
  double cell_px_ = 1.0;
  double share_ = 0.0;
  double share_doubt_ = 0.0;
  double offset_ = 0.0;
  double residual_ = 0.0;
  std::optional<double> opaque_light_;
  bool measured_ = false;
};

}  // namespace fogline
