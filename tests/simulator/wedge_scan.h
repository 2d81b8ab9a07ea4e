// A scan of a photographic step wedge, with every density known.
#pragma once

#include "simulator/encoding.h"
#include "simulator/geometry.h"
#include "simulator/scanner.h"

#include <cstdint>
#include <string>
#include <vector>

namespace filmsim {

enum class WedgeJoint { kTouching, kDarkLine, kLoose };

struct WedgePlan {
  std::uint64_t seed = 1;
  std::vector<double> densities;  ///< diffuse, of silver, lightest first
  /// By the certificate; empty: `densities`.
  std::vector<double> certified;
  double pitch_mm = 6.0;
  double width_mm = 14.0;
  WedgeJoint joint = WedgeJoint::kTouching;
  double joint_mm = 0.8;
  double direction_deg = 0.0;  ///< of rising density, clockwise from +x
  double margin_mm = 8.0;      ///< of picture around the wedge
  /// An opaque mask leaves this much bare light around the wedge; negative: no mask.
  double bare_mm = -1.0;
  int dirty_step = -1;
  double dirt_density = 0.0;
  int scratched_step = -1;
  bool tape = false;  ///< cloudy tape over the outer half of both end steps
  double granularity = 5e-4;
  double callier = 1.1;  ///< of the wedge's silver in this scanner
  double pixels_per_mm = 6.0;
  ScannerSettings scanner;  ///< its own Callier factor isn't used
  EncodingSettings encoding;
};

struct WedgeScan {
  Picture picture;
  std::vector<Point> middles_px;  ///< of the steps
  double bare_level = 0.0;  ///< signal of the bare light before it is bent, share of full scale
};

WedgeScan render_wedge(const WedgePlan& plan);

/// Writes the picture as TIFF with its resolution. Throws std::runtime_error if it can't.
void write_wedge(const WedgeScan& scan, const WedgePlan& plan, const std::string& path);

/// A flat picture of a table: code (and its standard deviation) of each step as a touching row of
/// `step_px` squares, lightest left, on bare light of `bare_code`; 0: as light as the lightest.
struct TableStep {
  double code = 0.0;
  double deviation = 0.0;
};
Picture picture_of_table(const std::vector<TableStep>& table, int bits, int step_px,
                         double surround_code, std::uint64_t seed);

}  // namespace filmsim
