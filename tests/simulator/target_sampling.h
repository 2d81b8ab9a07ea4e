// Random sensitometric tests as scans: brackets of an even wall and wedges printed on the film,
// with a wedge scanned by the same device to calibrate it.
#pragma once

#include "simulator/film_curve.h"
#include "simulator/film_stock.h"
#include "simulator/scenario.h"
#include "simulator/wedge_scan.h"

#include <vector>

namespace filmsim {

enum class TargetKind { kBracket, kWedgeAlong, kWedgeAcross };

struct TargetScan {
  TargetKind kind = TargetKind::kBracket;
  Scenario scenario;
  /// Scanned with the same device at the same setting.
  WedgePlan scanner_wedge;
  double certificate_u95 = 0.01;
  /// Bracket: exposures as the card tells them, in the order in which they were made, from the
  /// metered one, which lies `metered_log_h` above the speed point; standard deviation of each.
  std::vector<double> stops;
  double doubt_stops = 0.0;
  double metered_log_h = 1.0;
  /// For each strip in the picture: it lies the other way round.
  std::vector<bool> strip_turned;
  /// Printed wedge: its densities, lightest first, and log H without it, from the speed point.
  std::vector<double> printed;
  double log_h_at_zero = 0.0;
};

struct TargetWish {
  TargetKind kind = TargetKind::kBracket;
  /// Standard deviation of each exposure of a bracket.
  double doubt_stops = 0.0;
  /// The bare light stays below the top code and the file is of 16 bits; else 8 bits.
  bool calibratable = true;
  bool stray_light = true;
};

/// The film's true curve as a densitometer has it: net visual density by log H in the card's scale
/// (a bracket's from the metered exposure, a printed wedge's from that without the wedge).
class TargetCurve {
 public:
  explicit TargetCurve(const TargetScan& scan);
  [[nodiscard]] double net_density(double log_h) const;
  /// Log H in the same scale where net density is 0.10.
  [[nodiscard]] double speed_point_log_h() const;

 private:
  FilmStock stock_;
  FilmCurve silver_;
  double zero_log_h_;
};

TargetScan sample_target(const TargetWish& wish, std::uint64_t seed);

}  // namespace filmsim
