#include "roll/reading/scanner_settings.h"

#include "roll/reading/scan_doubt.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Bare light that reads this much darker or brighter than in the calibration, as a density, was
/// scanned with another exposure or other levels; lamps drift by less.
constexpr double zero_tolerance = 0.03;
/// Channels that moved against one another by so much were balanced otherwise.
constexpr double balance_tolerance = 0.015;

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
    cautions.push_back({Severity::caution,
                        fact_of(CautionKind::scanner_bits, {static_cast<double>(info.bits),
                                                            static_cast<double>(scanner.bits)})});
  }
  const bool kind_known = info.camera || scanner.device != ScannerDevice::unknown;
  if (kind_known && device_of(info, reading.device, &scanner) != scanner.device) {
    cautions.push_back({Severity::caution, fact_of(CautionKind::scanner_kind)});
  }
  if (!scanner.bare_code || reading.zero == ZeroSource::none || reading.zero_samples.empty()) {
    return cautions;
  }
  const PerChannel<double> shift = zero_shift(scanner, reading);
  const auto channels = static_cast<std::size_t>(scanner.channels);
  const auto [least, greatest] =
      std::minmax_element(shift.begin(), shift.begin() + static_cast<std::ptrdiff_t>(channels));
  if (*greatest - *least > balance_tolerance) {
    cautions.push_back(
        {Severity::caution, fact_of(CautionKind::scanner_balance, {*greatest - *least})});
  }
  const double furthest = std::max(std::abs(*least), std::abs(*greatest));
  if (furthest > zero_tolerance) {
    cautions.push_back({Severity::caution, fact_of(CautionKind::scanner_zero, {furthest})});
  }
  return cautions;
}

bool settings_differ(const ScannerCalibration& scanner, const ScanInfo& info,
                     const StripReading& reading) {
  return !settings_cautions(scanner, info, reading).empty();
}

}  // namespace fogline
