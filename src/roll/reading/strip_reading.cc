#include "roll/reading/strip_reading.h"

#include "density/callier.h"
#include "numerics/robust.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Over this share of its pixels at the top code, bare light is no reference.
constexpr double no_reference_share = 0.5;
/// The holder's edge throws a shadow and is blurred; this much inside it is left out, mm.
constexpr double window_margin_mm = 0.2;
/// Beyond the film, mm: so that bridges and rebate at the edge are whole in the straight strip.
constexpr double beyond_film_mm = 0.6;

/// Mean share of clipped pixels of each channel.
PerChannel<double> mean_clip(const std::vector<LightSample>& samples) {
  PerChannel<double> mean{};
  for (const LightSample& sample : samples) {
    for (std::size_t c = 0; c < mean.size(); ++c) {
      mean[c] += sample.clipped_share[c] / static_cast<double>(samples.size());
    }
  }
  return mean;
}

double greatest_of(const PerChannel<double>& shares) {
  return *std::max_element(shares.begin(), shares.end());
}

void sample_zero(StripReading& reading, const FilmStrip& film, const StraightStrip& strip,
                 const ScanContext& scan) {
  const int channels = strip.light.channels();
  const bool may_holes =
      scan.clear == ClearReference::automatic || scan.clear == ClearReference::holes;
  const bool may_gap = scan.clear == ClearReference::automatic || scan.clear == ClearReference::gap;
  constexpr std::size_t fewest_holes = 2;
  if (may_holes) {
    std::vector<LightSample> holes = samples_in_holes(strip, film, scan.clips);
    if (holes.size() >= fewest_holes) {
      reading.zero = ZeroSource::perforations;
      reading.zero_samples = std::move(holes);
    }
  }
  if (may_gap && reading.zero == ZeroSource::none) {
    std::vector<LightSample> gap = samples_beside_film(film, scan.grid, scan.clips);
    if (!gap.empty()) {
      reading.zero = ZeroSource::clear_gate;
      reading.zero_samples = std::move(gap);
    }
  }
  reading.zero_clipped_each = mean_clip(reading.zero_samples);
  reading.zero_clipped = greatest_of(reading.zero_clipped_each);
  if (reading.zero_clipped > no_reference_share) {
    reading.zero = ZeroSource::none;
  }
  if (scan.blank_level && reading.zero == ZeroSource::none &&
      (scan.clear == ClearReference::automatic || scan.clear == ClearReference::none)) {
    LightSample blank;
    blank.film = {0.5 * (film.along_begin_mm + film.along_end_mm), 0.0};
    blank.light = *scan.blank_level;
    reading.zero = ZeroSource::reference_scan;
    reading.zero_samples = {blank};
    reading.zero_clipped = 0.0;
  }
  if (reading.zero == ZeroSource::none && scan.clear == ClearReference::automatic &&
      scan.scanner != nullptr && scan.scanner->bare_code) {
    LightSample calibrated;
    calibrated.film = {0.5 * (film.along_begin_mm + film.along_end_mm), 0.0};
    for (std::size_t c = 0; c < static_cast<std::size_t>(channels); ++c) {
      calibrated.light[c] =
          scan.scanner->curves.of_channel[c].light_of((*scan.scanner->bare_code)[c]);
    }
    reading.zero = ZeroSource::scanner_file;
    reading.zero_samples = {calibrated};
    reading.zero_clipped = 0.0;
  }
}

/// A lamp that reads clear film as zero, for scans without a bare light path in sight.
Lamp clear_film_lamp(const FilmStrip& film, const StraightStrip& strip, const ScanContext& scan,
                     const std::vector<ClearPatch>& patches, double clear_share) {
  const int channels = strip.light.channels();
  LightSample flat;
  flat.light.fill(1.0);
  const Lamp unit = Lamp::fitted({flat}, channels);
  const DensityStrip plain = density_of(strip, film.map, scan.stray, unit);
  const std::optional<ClearFilm> clear = read_clear_film(plain, patches, clear_share);
  if (!clear) {
    return {};
  }
  std::vector<LightSample> samples;
  for (const ClearPatch& patch : clear->used) {
    samples.push_back(read_light(strip, patch.area));
  }
  subtract_stray(samples, film.map, scan.stray, channels);
  return Lamp::fitted(samples, channels);
}

/// The scanner saw silver in directed light: from densities on one base to diffuse ones. Clear
/// film's fog, read as `fog` dense, is silver already. Where clear film is zero it stays so.
void make_diffuse(Raster<float>& directed, const PerChannel<double>& clear, bool clear_is_zero,
                  double callier, double fog) {
  const DiffuseScale scale(callier);
  PerChannel<double> base{};
  PerChannel<double> zero{};
  for (std::size_t c = 0; c < base.size(); ++c) {
    base[c] = clear[c] - fog;
    zero[c] = clear_is_zero ? base[c] + diffuse_density(fog, callier) : 0.0;
  }
  const auto channels = static_cast<std::size_t>(directed.channels());
  std::size_t i = 0;
  for (float& density : directed.samples()) {
    const std::size_t c = i++ % channels;
    // What is thinner than the base (a hole) holds no silver.
    const double silver = static_cast<double>(density) - base[c];
    density =
        static_cast<float>(base[c] - zero[c] + (silver > 0.0 ? scale.of_directed(silver) : silver));
  }
}

/// Callier's factor of what read this scan, as far as anybody told it.
double callier_taken_out(const ScanContext& scan) {
  if (scan.scanner != nullptr && scan.scanner->of_silver()) {
    return scan.scanner->callier;
  }
  return scan.device == ScannerDevice::unknown ? 1.0 : scan.devices.angle.of(scan.device).callier;
}

/// Median share of clipped pixels of each channel over clear film.
PerChannel<double> clip_of_clear(const FilmStrip& film, const ScanContext& scan,
                                 const ClearFilm& clear) {
  PerChannel<std::vector<double>> shares;
  for (const ClearPatch& patch : clear.used) {
    const PerChannel<double> share = scan.clips.of(film.map, patch.area);
    for (std::size_t c = 0; c < share.size(); ++c) {
      shares[c].push_back(share[c]);
    }
  }
  PerChannel<double> middle{};
  for (std::size_t c = 0; c < middle.size(); ++c) {
    middle[c] = shares[c].empty() ? 0.0 : median(shares[c]);
  }
  return middle;
}

}  // namespace

double base_below_silver(const StripReading& reading) {
  return reading.clear->visual - (reading.clear_silver.greatest - usual_fog);
}

StripReading read_strip(const FilmStrip& film, const ScanContext& scan) {
  StripReading reading(scan.devices);
  reading.flattened = scan.blank_level.has_value();
  reading.scanner = scan.scanner;
  reading.device = scan.device;
  const FilmExtent extent{film.along_begin_mm - beyond_film_mm, film.along_end_mm + beyond_film_mm,
                          film.across_begin_mm - beyond_film_mm,
                          film.across_end_mm + beyond_film_mm};
  StraightStrip strip = straighten(scan.grid, film.map, extent, spot_pixels_per_mm);
  mask_outside(strip, film.map, film.window, window_margin_mm);
  const double clear_share = film.window.empty() ? clear_share_of_rebate : clear_share_of_rims;
  const int channels = strip.light.channels();
  sample_zero(reading, film, strip, scan);
  const std::vector<ClearPatch> patches = clear_patches(film);
  if (reading.zero != ZeroSource::none) {
    std::vector<LightSample> samples = reading.zero_samples;
    subtract_stray(samples, film.map, scan.stray, channels);
    reading.lamp = Lamp::fitted(samples, channels);
  } else {
    reading.lamp = clear_film_lamp(film, strip, scan, patches, clear_share);
  }
  if (reading.lamp.empty()) {
    return reading;
  }
  reading.density = density_of(strip, film.map, scan.stray, reading.lamp);
  reading.clear = read_clear_film(reading.density, patches, clear_share);
  const PointMm middle{0.5 * (film.along_begin_mm + film.along_end_mm),
                       0.5 * (film.across_begin_mm + film.across_end_mm)};
  PerChannel<double> light{};
  for (int c = 0; c < channels; ++c) {
    light[static_cast<std::size_t>(c)] = reading.lamp.light(middle, c);
  }
  reading.bare_light = visual_from_channels(light, channels);
  reading.callier = callier_taken_out(scan);
  if (reading.callier > 1.0 && reading.clear) {
    const bool clear_is_zero = reading.zero == ZeroSource::none;
    const double callier = reading.callier;
    const ClearSilver seen =
        silver_in_clear_film(clear_is_zero ? 0.0 : reading.clear->visual, film.format, scan.films);
    // What fog is beyond the usual was seen in directed light.
    const double fog = seen.likely - usual_fog + directed_density(usual_fog, callier);
    make_diffuse(reading.density.channels, reading.clear->density, clear_is_zero, callier, fog);
    make_diffuse(reading.density.visual, {reading.clear->visual, 0.0, 0.0}, clear_is_zero, callier,
                 fog);
    reading.clear = read_clear_film(reading.density, patches, clear_share);
  }
  if (reading.clear && reading.zero != ZeroSource::none) {
    reading.clear_silver = silver_in_clear_film(reading.clear->visual, film.format, scan.films);
  }
  if (reading.clear) {
    reading.clear_clipped_each = clip_of_clear(film, scan, *reading.clear);
    reading.clear_clipped = greatest_of(reading.clear_clipped_each);
    reading.edge_print = read_edge_print(reading.density, film, reading.clear->visual);
  }
  reading.leader = read_leader(reading.density, film);
  const PointPx at = film.map.scan_from_film(middle);
  reading.stray_doubt = scan.stray.doubt(at.x, at.y) / std::max(1e-6, reading.bare_light);
  reading.stray_field = scan.stray.visual_field(at.x, at.y, std::max(1e-6, reading.bare_light));
  return reading;
}

}  // namespace fogline
