// A scanner, or a camera over a light panel: what it makes of the light that passes the film.
#pragma once

#include "simulator/film_stock.h"
#include "simulator/plane.h"
#include "simulator/response_shape.h"

#include <cstdint>
#include <vector>

namespace filmsim {

struct GlareSettings {
  double share = 0.005;             ///< of the light that is spread, 0 to 0.03
  double narrow_sd_mm = 2.0;        ///< two Gaussians: one of some millimetres,
  double wide_sd_mm = 25.0;         ///< one of the whole field
  double narrow_part = 0.5;         ///< share of the spread light in the narrow one
  bool sensor_line_along_x = true;  ///< a moving stripe of light glares along the sensor line ...
  double aspect = 1.0;              ///< ... this many times wider than across
};

/// Where the bare light lands on the sensor's scale.
enum class ExposureRule {
  kLevel,        ///< the brightest bare light reaches `bare_level`
  kClippedShare  ///< `clipped_share` of the bare light is beyond full scale
};

struct ScannerSettings {
  Rgb lamp = {1.0, 1.0, 1.0};  ///< colour of the bare light, brightest channel 1
  ExposureRule exposure_rule = ExposureRule::kLevel;
  double bare_level = 0.85;  ///< share of full scale; above 1 all is clipped
  double clipped_share = 0.1;
  /// Callier: net silver density is read as D (1 + (callier - 1)(1 - exp(-D / 0.3))), since the
  /// factor grows with density and is nearly constant above 0.3.
  double callier = 1.0;
  GlareSettings glare;
  double blur_um = 20.0;         ///< sd of the point spread, 10 to 40
  double sharpening = 0.0;       ///< unsharp masking of the codes, 0 to 0.6
  Rgb tilt_x = {0.0, 0.0, 0.0};  ///< lamp, density from left to right border
  Rgb tilt_y = {0.0, 0.0, 0.0};  ///< lamp, density from upper to lower border
  double bulge = 0.0;            ///< lamp and lens, density at the corner less the middle
  double full_well = 40000.0;    ///< electrons at full scale: shot noise
  double read_noise = 10.0;      ///< electrons
  int adc_bits = 0;              ///< steps of the converter, 10 to 14; 0: as fine as the file
  double black_offset = 0.0;     ///< share of full scale added to everything, 0 to 0.003
  ResponseShape response;        ///< what is bent between the sensor and the file
};

/// Callier's factor times net density.
float seen_density(float net_density, double callier);

/// Optics and sensor. `light` holds one plane a channel, the light past the film as a share of the
/// even, bare lamp; on return the sensor's signal as a share of full scale (may exceed 1).
/// `bare_px` are pixels of bare light, for the exposure.
void expose_sensor(std::vector<Plane>& light, const ScannerSettings& settings, double pixels_per_mm,
                   const std::vector<std::size_t>& bare_px, std::uint64_t seed);

/// The glare alone: replaces each plane by (1 - share) L + share (K * L).
void add_glare(Plane& light, const GlareSettings& settings, double pixels_per_mm);

}  // namespace filmsim
