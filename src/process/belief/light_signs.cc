#include "process/belief/light_signs.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace fogline {

namespace {

bool tells_density(const ScanMeasurement& scan) {
  return scan.fitness != Fitness::unfit && scan.fitness != Fitness::marks_only;
}

/// What lies under a net density of this scan; nothing where it can't be told.
std::optional<double> base_of(const ScanMeasurement& scan) {
  if (scan.densities_above == DensitiesAbove::base) {
    return 0.0;
  }
  if (scan.base_fog) {
    return scan.base_fog->visual.value;
  }
  return std::nullopt;
}

/// A scan's density limit is where stray light's doubt (95 %) is this, and it grows as opacity.
constexpr double limit_u95 = 0.1;

NetReading reading_of(const Quantity& density, double base, const ScanMeasurement& scan) {
  NetReading reading{std::max(0.0, density.value - base), density.at_least, 0.0};
  if (scan.density_limit) {
    reading.stray_sd =
        limit_u95 / coverage_factor_95 * std::pow(10.0, density.value - *scan.density_limit);
  }
  return reading;
}

std::optional<NetReading> median_reading(const std::vector<NetReading>& readings) {
  if (readings.empty()) {
    return std::nullopt;
  }
  std::vector<double> values;
  std::vector<double> strays;
  std::size_t bounds = 0;
  for (const NetReading& reading : readings) {
    values.push_back(reading.density);
    strays.push_back(reading.stray_sd);
    bounds += reading.at_least ? 1 : 0;
  }
  return NetReading{median(values), 2 * bounds > readings.size(), median(strays)};
}

struct ToneReadings {
  std::vector<NetReading> shadow;
  std::vector<NetReading> highlight;
};

void add_frame(const FrameTone& tone, double base, const ScanMeasurement& scan,
               ToneReadings& readings) {
  readings.shadow.push_back(reading_of(*tone.shadow, base, scan));
  readings.highlight.push_back(reading_of(*tone.highlight, base, scan));
}

/// Tones of the frames that count.
ToneReadings counted_tones(const RollMeasurement& roll) {
  ToneReadings whole;
  ToneReadings cut;
  for (const ScanMeasurement& scan : roll.scans) {
    const std::optional<double> base = base_of(scan);
    if (!tells_density(scan) || !base) {
      continue;
    }
    for (const FrameMeasurement& frame : scan.frames) {
      if (!frame.inferred && !frame.repeats_frame && !frame.target && frame.tone.shadow &&
          frame.tone.highlight) {
        add_frame(frame.tone, *base, scan, frame.cut ? cut : whole);
      }
    }
  }
  return whole.shadow.empty() ? cut : whole;
}

std::optional<NetReading> net_of(const Known<Quantity>& density, const std::optional<double>& base,
                                 const ScanMeasurement& scan) {
  if (!density || !base) {
    return std::nullopt;
  }
  return reading_of(*density, *base, scan);
}

void add_film(const ScanMeasurement& scan, LightSigns& signs) {
  for (const StripMeasurement& strip : scan.strips) {
    if (signs.format == FilmFormat::unknown) {
      signs.format = strip.format;
    }
    if (scan.pixels_per_mm) {
      signs.film_mm += std::max(strip.box_px.width, strip.box_px.height) / *scan.pixels_per_mm;
    }
  }
  signs.frames_in_sight += static_cast<int>(
      std::count_if(scan.frames.begin(), scan.frames.end(),
                    [](const FrameMeasurement& frame) { return !frame.inferred; }));
}

std::optional<Quantity> middle_base(const std::vector<Quantity>& bases) {
  if (bases.empty()) {
    return std::nullopt;
  }
  std::vector<double> values;
  std::vector<double> doubts;
  for (const Quantity& base : bases) {
    values.push_back(base.value);
    doubts.push_back(base.u95);
  }
  return Quantity{median(values), median(doubts), {}, {}, {}, false};
}

bool looks_finished(const ScanMeasurement& scan) {
  return std::any_of(scan.cautions.begin(), scan.cautions.end(), [](const Caution& caution) {
    return caution.fact.kind == CautionKind::camera_display_curve;
  });
}

double tone_curve_doubt(const ScanMeasurement& scan, const RollPopulation& population) {
  const ScanInfo& info = scan.info;
  if (info.transfer.source != TransferSource::assumed) {
    return population.told_curve_sd_share;
  }
  const bool guessed = info.bits > 8 && info.transfer.kind != TransferKind::linear;
  return looks_finished(scan) ? population.finished_picture_curve_sd_share
         : guessed            ? population.guessed_curve_sd_share
                              : population.assumed_curve_sd_share;
}

/// How far silver's scale may still be off on a device of a kind that was told (standard
/// deviation).
double told_device_doubt(ScannerDevice device, const RollPopulation& population) {
  switch (device) {
    case ScannerDevice::camera:
      return population.told_camera_sd_share;
    case ScannerDevice::flatbed:
      return population.told_flatbed_sd_share;
    case ScannerDevice::film_scanner:
      return population.told_film_scanner_sd_share;
    case ScannerDevice::unknown:
      break;
  }
  return population.scanner_sd_share;
}

}  // namespace

LightSigns gather_light_signs(const RollMeasurement& roll) {
  LightSigns signs;
  std::vector<NetReading> prints;
  std::vector<NetReading> leaders;
  std::vector<Quantity> bases;
  for (const ScanMeasurement& scan : roll.scans) {
    if (!tells_density(scan)) {
      continue;
    }
    signs.readable = true;
    signs.sixteen_bits = signs.sixteen_bits || scan.info.bits > 8;
    signs.calibrated = signs.calibrated || scan.fitness == Fitness::measured;
    add_film(scan, signs);
    if (scan.densities_above == DensitiesAbove::light_path && scan.base_fog) {
      bases.push_back(scan.base_fog->visual);
    }
    const std::optional<double> base = base_of(scan);
    if (const auto print = net_of(scan.edge_print, base, scan)) {
      prints.push_back(*print);
    }
    if (const auto leader = net_of(scan.leader, base, scan)) {
      leaders.push_back(*leader);
    }
  }
  const ToneReadings tones = counted_tones(roll);
  signs.frames = static_cast<int>(tones.shadow.size());
  signs.shadow = median_reading(tones.shadow);
  signs.highlight = median_reading(tones.highlight);
  signs.edge_print = median_reading(prints);
  signs.leader = median_reading(leaders);
  signs.base_fog = middle_base(bases);
  return signs;
}

ReadingScale reading_scale(const RollMeasurement& roll, const RollPopulation& population) {
  for (const ScanMeasurement& scan : roll.scans) {
    if (!tells_density(scan)) {
      continue;
    }
    if (scan.fitness == Fitness::measured) {
      return {1.0, population.told_curve_sd_share};
    }
    const double curve = tone_curve_doubt(scan, population);
    if (scan.device_told) {
      return {1.0, std::hypot(curve, told_device_doubt(scan.device, population))};
    }
    return scan.info.camera ? ReadingScale{population.camera_factor,
                                           std::hypot(curve, population.camera_sd_share)}
                            : ReadingScale{population.scanner_factor,
                                           std::hypot(curve, population.scanner_sd_share)};
  }
  return {};
}

}  // namespace fogline
