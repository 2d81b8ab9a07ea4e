#pragma once

#include "density/clipped_share.h"
#include "film/film_layout.h"
#include "film/straight_strip.h"

#include <fogline/base/quantity.h>
#include <fogline/base/scan_source.h>

#include <vector>

namespace fogline {

/// A place where bare light (or clear film) was read: its light, and how much of it had reached the
/// top code.
struct LightSample {
  PointMm film;
  PerChannel<double> light{};
  PerChannel<double> clipped_share{};
};

/// Median light of an area, per channel.
LightSample read_light(const StraightStrip& strip, const FilmExtent& area);

/// The bare light along a strip, per channel: log10 light as a low polynomial of the place on the
/// film. D = 0 is what it says at that place.
class Lamp {
 public:
  /// Fits the samples robustly: torn or dirty perforations drop out. One, three or five terms by
  /// their number and spread. Empty without samples.
  static Lamp fitted(const std::vector<LightSample>& samples, int channels);

  [[nodiscard]] bool empty() const { return coefficients_[0].empty(); }
  [[nodiscard]] double light(PointMm film, int channel) const;
  /// Scatter of the samples about the fit, as a density.
  [[nodiscard]] double scatter_density() const { return scatter_; }
  /// Greatest less smallest bare light over the samples, visual, as a density.
  [[nodiscard]] double unevenness_density() const { return unevenness_; }

 private:
  PerChannel<std::vector<double>> coefficients_;
  double scatter_ = 0.0;
  double unevenness_ = 0.0;
};

/// Reads the perforations in sight: the middle of each hole, 0.4 mm off its edge (blur, film
/// thickness, sharpening), its median light per channel.
std::vector<LightSample> samples_in_holes(const StraightStrip& strip, const FilmStrip& film,
                                          const ClippedShare& clips);

/// Reads stretches of bare light beside the film, in pieces of some millimetres.
std::vector<LightSample> samples_beside_film(const FilmStrip& film, const ScanGrid& grid,
                                             const ClippedShare& clips);

}  // namespace fogline
