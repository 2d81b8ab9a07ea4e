// Simulated brackets and printed wedges, measured as the program does; the bench uses it too.
#pragma once

#include "simulator/render.h"
#include "simulator/target_sampling.h"
#include "simulator/wedge_scan.h"
#include "tables/shipped_knowledge.h"

#include <fogline/pixels/open_scan.h>
#include <fogline/roll/calibrate_scanner.h>
#include <fogline/roll/measure_roll.h>

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace end_to_end {

inline fogline::WedgeReference reference_of(const std::vector<double>& densities, double u95) {
  fogline::WedgeReference reference;
  reference.name = "invented wedge";
  for (std::size_t i = 0; i < densities.size(); ++i) {
    reference.steps.push_back({std::to_string(i + 1), densities[i], u95});
  }
  return reference;
}

/// What its maker's card tells of it.
inline fogline::ExposureTarget target_of(const filmsim::TargetScan& scan) {
  fogline::ExposureTarget target;
  target.exposure_index = 400.0;
  if (scan.kind == filmsim::TargetKind::kBracket) {
    target.bracket = fogline::BracketTarget{
        scan.stops, std::vector<double>(scan.stops.size(), scan.doubt_stops), {}};
  } else {
    constexpr double certificate_u95 = 0.01;
    target.wedge =
        fogline::ExposedWedgeTarget{reference_of(scan.printed, certificate_u95), std::nullopt};
  }
  return target;
}

/// Writes the scan to `stem`.tif, and `stem`-wedge.tif where the scanner is `calibrated` first.
inline fogline::RollMeasurement measure_target(const filmsim::TargetScan& scan,
                                               const filmsim::Simulated& drawn,
                                               const fogline::ExposureTarget& target,
                                               bool calibrated, const std::string& stem) {
  std::optional<fogline::ScannerCalibration> scanner;
  if (calibrated) {
    const std::string path = stem + "-wedge.tif";
    write_wedge(filmsim::render_wedge(scan.scanner_wedge), scan.scanner_wedge, path);
    const auto wedge = fogline::open_scan(path, {});
    // The owner says what he has.
    scanner = fogline::calibrate_from_wedge(
                  *wedge, reference_of(scan.scanner_wedge.certified, scan.certificate_u95),
                  fogline::ScannerDevice::flatbed, fogline::shipped_knowledge().scan, {})
                  .calibration;
  }
  fogline::MeasureOptions options = fogline::shipped_options();
  options.scanner = scanner;
  options.target = target;
  const auto source = fogline::open_scan(write_scan(drawn, stem + ".tif"), {});
  return fogline::measure_roll(*source, options).measurement;
}

}  // namespace end_to_end
