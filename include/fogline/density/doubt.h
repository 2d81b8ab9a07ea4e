#pragma once

#include <fogline/base/quantity.h>

#include <array>
#include <numeric>
#include <vector>

namespace fogline {

/// What may be claimed from a scan, best first.
/// measured: calibrated. comparable: tone curve known, 16 bits, bare light path seen. indicative:
/// tone curve assumed, or 8 bits, or the bare light path partly clipped. relative: no bare light
/// path in sight, densities above base only. marks_only: no densities. unfit: nothing.
enum class Fitness { measured, comparable, indicative, relative, marks_only, unfit };

/// What density 0 means: the bare light path, or the film's own clear base.
enum class DensitiesAbove { light_path, base };

/// Where density 0 (the bare light path) was read.
/// `scanner_file`: not in this scan, but in that of its calibration.
enum class ZeroSource { perforations, clear_gate, reference_scan, scanner_file, none };

/// How bright a place's surroundings are for glare that reaches near, middling and far: stray light
/// over the bare light, were the scanner's share of it 1. How far a scanner's glare reaches can't
/// be told from one wedge, so all three count alike and their difference is doubt.
using StrayField = std::array<double, 3>;

constexpr StrayField even_field(double field) {
  return {field, field, field};
}

inline double mean_of(const StrayField& field) {
  return std::accumulate(field.begin(), field.end(), 0.0) / static_cast<double>(field.size());
}

struct ScannerCalibration;

/// What makes densities of one strip doubtful, as standard uncertainties unless said otherwise.
/// Filled by what the scan shows and by what is known of its kind.
struct DoubtSources {
  /// Noise, grain and unevenness of the film over the area that was read, density.
  double noise_density = 0.0;
  /// Zero: scatter of the bare light where it was read, density.
  double zero_density = 0.0;
  /// Lamp and lens between the places where zero was read, density.
  double evenness_density = 0.0;
  /// Clipped bare light may have been brighter than the top code: greatest shift, density, one way
  /// (densities read too low).
  double clipped_shift_density = 0.0;
  /// Stray light left, as a share of the bare light. With a calibration: what is left besides its
  /// own.
  double stray_transmittance = 0.0;
  /// At the film; for calibrated scans.
  StrayField stray_field{};
  /// Scale of the tone curve: share of the density. With a calibration: what scan settings unlike
  /// its own may add.
  double transfer_share = 0.0;
  /// A camera's display curve flattens near the top code: densities just below the lamp may read
  /// this many times too low (1: doesn't), fading with density.
  double highlight_compression = 1.0;
  /// Angle of light: directed light reads silver up to this share too high (half width of the
  /// interval that covers 95 in 100 devices of the kind).
  double angle_share_95 = 0.0;
  /// Calibrated by silver, a base without any reads low: the same for what isn't silver.
  double base_share_95 = 0.0;
  /// The same under dense silver: reached from clear film's as Callier's factor rises with density.
  double dense_base_share_95 = 0.0;
  /// Callier's factor that was taken out of silver's densities; 1: none was.
  double callier = 1.0;
  /// The calibration by which codes became light; nullptr: none. Not owned.
  const ScannerCalibration* scanner = nullptr;
};

/// Where a part of a density's doubt comes from.
enum class DoubtSource {
  noise,        ///< noise and grain over the area
  zero,         ///< bare light's scatter
  evenness,     ///< lamp and lens between the places of bare light
  clipping,     ///< bare light partly beyond the top code, or a tone curve that flattens there
  stray_light,  ///< veiling glare and black offset left
  transfer,     ///< tone curve, or a calibration's residual
  certificate,  ///< the wedge's certificate, or the slope of a nominal one
  angle         ///< angle of light and silver's scatter
};

/// One line of an uncertainty budget (JCGM 100 clause 5.1; sensitivities are 1, since every source
/// is given as a density already).
struct BudgetLine {
  DoubtSource source = DoubtSource::noise;
  /// Standard uncertainty, density.
  double standard_density = 0.0;
  /// Shared by all rolls of this scanner and calibration; else the roll's own.
  bool common = false;

  friend bool operator==(const BudgetLine&, const BudgetLine&) = default;
};

/// The budget of a density above zero of which `net` is silver. Sources that add nothing are left
/// out. Clipping is told as the standard deviation of its one-way interval's half width.
std::vector<BudgetLine> budget_of_density(const DoubtSources& sources, double density, double net);

/// Expanded uncertainty (95 %) of a density `density` above zero of which `net` is silver. Sources
/// are independent and add in squares (JCGM 100 clause 5.1.2), the angle of light as its own 95 %
/// half width.
double u95_of_density(const DoubtSources& sources, double density, double net);

/// The same for a difference of two densities of one frame: what both share (zero, clipping)
/// cancels.
double u95_of_range(const DoubtSources& sources, double low, double high);

/// The quantity with its interval: skewed upward where clipping or a compressed tone curve can only
/// have made the density read low, and near the limit, where the logarithm isn't straight over the
/// doubt of stray light (see `skewed_interval`). Tells the part that all rolls of the scanner
/// share.
Quantity quantity_of_density(const DoubtSources& sources, double density, double net);

/// Highest density at which stray light, and a calibration's own doubt, leave 0.1 (95 %).
double density_limit(const DoubtSources& sources);

/// Highest density that is told as a number at all: beyond it the same doubt (95 %) is 0.45, about
/// the light itself, or nothing so dense was shown to the calibration, and only a lower bound can
/// be given.
double density_reach(const DoubtSources& sources);

}  // namespace fogline
