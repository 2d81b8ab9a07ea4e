#include "roll/reading/scanner_settings.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>

namespace fogline {

namespace {

/// Bare light that reads this much darker or brighter than in the calibration, as a density, was
/// scanned with another exposure or other levels; lamps drift by less.
constexpr double zero_tolerance = 0.03;
/// Channels that moved against one another by so much were balanced otherwise.
constexpr double balance_tolerance = 0.015;

std::string hundredths(double value) {
  char text[16];
  std::snprintf(text, sizeof text, "%.2f", value);
  return text;
}

/// Density of the scan's bare light above the calibration's, per channel.
PerChannel<double> zero_shift(const ScannerCalibration& scanner, const StripReading& reading) {
  PerChannel<double> shift{};
  for (int c = 0; c < scanner.channels; ++c) {
    const auto i = static_cast<std::size_t>(c);
    double light = 0.0;
    for (const LightSample& sample : reading.zero_samples) {
      light += sample.light[i] / static_cast<double>(reading.zero_samples.size());
    }
    const double calibrated = scanner.curves.of_channel[i].light_of((*scanner.bare_code)[i]);
    shift[i] = -std::log10(std::max(1e-9, light) / calibrated);
  }
  return shift;
}

}  // namespace

std::vector<Caution> settings_cautions(const ScannerCalibration& scanner, const ScanInfo& info,
                                       const StripReading& reading) {
  std::vector<Caution> cautions;
  if (info.bits != scanner.bits) {
    cautions.push_back({"scanner-bits", Severity::caution,
                        "The scan has " + std::to_string(info.bits) +
                            " bits a channel, the calibration " + std::to_string(scanner.bits) +
                            ": use one setting for both."});
  }
  if (info.camera && scanner.device != ScannerDevice::camera) {
    cautions.push_back({"scanner-kind", Severity::caution,
                        "The scan comes from a camera, the calibration doesn't."});
  }
  if (!scanner.bare_code || reading.zero == ZeroSource::none || reading.zero_samples.empty()) {
    return cautions;
  }
  const PerChannel<double> shift = zero_shift(scanner, reading);
  const auto channels = static_cast<std::size_t>(scanner.channels);
  const auto [least, greatest] =
      std::minmax_element(shift.begin(), shift.begin() + static_cast<std::ptrdiff_t>(channels));
  if (*greatest - *least > balance_tolerance) {
    cautions.push_back({"scanner-balance", Severity::caution,
                        "The channels' bare light stands " + hundredths(*greatest - *least) +
                            " in density off the balance of the calibration: colour correction "
                            "was at work, or the lamp is another; switch all correction off."});
  }
  const double furthest = std::max(std::abs(*least), std::abs(*greatest));
  if (furthest > zero_tolerance) {
    cautions.push_back({"scanner-zero", Severity::caution,
                        "The bare light reads " + hundredths(furthest) +
                            " in density off that of the calibration: another exposure or other "
                            "levels; scan wedge and film with the very same settings."});
  }
  return cautions;
}

bool settings_differ(const ScannerCalibration& scanner, const ScanInfo& info,
                     const StripReading& reading) {
  return !settings_cautions(scanner, info, reading).empty();
}

}  // namespace fogline
