#pragma once

#include "density/callier.h"
#include "density/clipped_share.h"
#include "density/density_strip.h"
#include "density/device_knowledge.h"
#include "density/stray_light.h"
#include "film/film_knowledge.h"
#include "film/film_layout.h"
#include "sensitometry/clear_film.h"
#include "sensitometry/clear_silver.h"
#include "sensitometry/factory_exposures.h"

#include <fogline/density/doubt.h>
#include <fogline/density/scanner_calibration.h>
#include <fogline/roll/measure_roll.h>

#include <optional>
#include <vector>

namespace fogline {

/// One strip in density, with everything that its zero rests on.
struct StripReading {
  /// A strip of which nothing was read. `known` outlives it.
  explicit StripReading(const DeviceKnowledge& known) : devices(&known) {}

  ZeroSource zero = ZeroSource::none;
  /// Places of bare light that zero was read from.
  std::vector<LightSample> zero_samples;
  /// Greatest share of clipped pixels among channels, over the bare light and over clear film.
  double zero_clipped = 0.0;
  double clear_clipped = 0.0;
  /// The same of each channel.
  PerChannel<double> zero_clipped_each{};
  PerChannel<double> clear_clipped_each{};
  /// Each channel is its own; false where a lost one shows what the others see.
  bool colours = true;
  /// A blank scan took the lamp's unevenness out.
  bool flattened = false;
  /// Bare light's visual level, 0 to 1.
  double bare_light = 0.0;
  Lamp lamp;
  DensityStrip density;
  /// Read above the bare light, or (zero none) above itself: then all zero.
  std::optional<ClearFilm> clear;
  std::optional<AreaReading> edge_print;
  std::optional<AreaReading> leader;
  /// Stray light's doubt as a share of zero's light.
  double stray_doubt = 0.0;
  /// In mid-strip.
  StrayField stray_field{};
  /// The calibration by which its codes became light; nullptr: none. Not owned.
  const ScannerCalibration* scanner = nullptr;
  /// The device as told.
  ScannerDevice device = ScannerDevice::unknown;
  /// Callier's factor that was taken out of silver: the calibration's, else the told device's; 1:
  /// none was.
  double callier = 1.0;
  /// In clear film.
  ClearSilver clear_silver{usual_fog, usual_fog};
  /// What devices usually do. Not owned, never nullptr.
  const DeviceKnowledge* devices;
};

/// A scan as the strips' readings need it.
struct ScanContext {
  const ScanGrid& grid;
  const ClippedShare& clips;
  const StrayLight& stray;
  ClearReference clear = ClearReference::automatic;
  /// Bare light's level by a blank scan that was divided out; absent without one.
  std::optional<PerChannel<double>> blank_level;
  /// As in StripReading.
  const ScannerCalibration* scanner = nullptr;
  ScannerDevice device = ScannerDevice::unknown;
  const DeviceKnowledge& devices;
  const FilmKnowledge& films;
};

/// Clear film, which must have been read, without its fog beyond the usual: what lies above is
/// silver.
double base_below_silver(const StripReading& reading);

/// Reads one strip: zero from perforations, else from bare light beside the film; where neither is
/// in sight or most of it is clipped, densities above clear film.
StripReading read_strip(const FilmStrip& film, const ScanContext& scan);

}  // namespace fogline
