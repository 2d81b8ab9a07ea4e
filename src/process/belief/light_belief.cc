#include "process/belief/light_belief.h"

#include "process/belief/normal_grid.h"
#include "process/belief/usual_curve.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace fogline {

namespace {

constexpr double log10_of_a_stop = 0.30103;
/// Standard deviation of a median over that of a mean, normal samples.
const double median_loss = std::sqrt(std::numbers::pi / 2.0);
/// Grids reach this many standard deviations, with this many points: a step of each then moves the
/// highlight by about the noise of its reading.
constexpr double reach_sd = 3.8;
constexpr int placings = 33;
constexpr int ranges = 25;
constexpr int contrasts = 27;
constexpr int scales = 3;
/// Contrast index beyond which no pictorial film goes.
constexpr double least_contrast = 0.15;
constexpr double greatest_contrast = 1.3;
/// Curve tables: log exposure from the speed point.
constexpr double table_begin = -4.0;
constexpr double table_step = 0.02;
constexpr int table_size = 501;

/// A grid point in standard deviations, and its share of a normal distribution.
struct GridPoint {
  double deviation = 0.0;
  double weight = 0.0;
};

std::vector<GridPoint> normal_grid(int count) {
  std::vector<GridPoint> grid;
  double sum = 0.0;
  for (int i = 0; i < count; ++i) {
    const double deviation = reach_sd * (2.0 * i / (count - 1) - 1.0);
    grid.push_back({deviation, std::exp(-0.5 * deviation * deviation)});
    sum += grid.back().weight;
  }
  for (GridPoint& point : grid) {
    point.weight /= sum;
  }
  return grid;
}

/// A curve by table, for the millions of look-ups.
class CurveTable {
 public:
  explicit CurveTable(const UsualCurve& curve, double speed_shift_log_h) {
    for (int i = 0; i < table_size; ++i) {
      values_[static_cast<std::size_t>(i)] =
          curve.density(table_begin + table_step * i + speed_shift_log_h);
    }
  }

  [[nodiscard]] double density(double log_h) const {
    const double place = std::clamp((log_h - table_begin) / table_step, 0.0, table_size - 1.001);
    const auto i = static_cast<std::size_t>(place);
    const double part = place - static_cast<double>(i);
    return values_[i] + part * (values_[i + 1] - values_[i]);
  }

 private:
  std::array<double, table_size> values_{};
};

/// Sum in squares: the quick one, for the inner loop.
double sd_of(double a, double b) {
  return std::sqrt(a * a + b * b);
}

/// How likely a reading is where the density should be `expected`, with `own_sd` beside what stray
/// light leaves, up to a common factor; 0 where it is beyond all likelihood.
double likelihood(const NetReading& reading, double expected, double own_sd) {
  constexpr double beyond_all = 6.0;
  const double sd = sd_of(own_sd, reading.stray_sd);
  const double deviation = (expected - reading.density) / sd;
  if (reading.at_least) {
    return normal_share_below(deviation);
  }
  return std::abs(deviation) > beyond_all ? 0.0 : std::exp(-0.5 * deviation * deviation) / sd;
}

/// Log exposures at which usual subjects and factory print lie.
struct UsualExposures {
  double shadow_log_h = 0.0;
  double highlight_log_h = 0.0;
  double print_log_h = 0.0;
};

double maximum_density_at(double contrast_index, double usual_maximum,
                          const RollPopulation& population) {
  // Less development leaves less silver at the top too; the two-arc construction needs the rest.
  const double scaled = usual_maximum * contrast_index / population.usual_contrast_index;
  constexpr double room_above_outer_arc = 2.3;
  return std::max(scaled, room_above_outer_arc * std::sin(std::atan(contrast_index)));
}

std::vector<UsualCurveShape> curve_shapes(const RollPopulation& population) {
  std::vector<UsualCurveShape> shapes;
  for (const double toe : population.toe_densities) {
    for (const double maximum : population.maximum_densities) {
      shapes.push_back({toe, maximum});
    }
  }
  return shapes;
}

UsualExposures usual_exposures(const UsualCurveShape& shape, const RollPopulation& population) {
  const UsualCurve curve(shape, population.usual_contrast_index);
  return {curve.log_h(population.shadow_density), curve.log_h(population.highlight_density),
          curve.log_h(population.edge_print_density)};
}

/// Weight of edge print and leader at one contrast, toe and scale.
double weight_of_patches(const LightSigns& signs, const CurveTable& curve,
                         const UsualExposures& usual, double maximum, double factor,
                         const RollPopulation& population) {
  double weight = 1.0;
  if (signs.edge_print && signs.edge_print->density < population.greatest_edge_print_density) {
    const double expected = factor * curve.density(usual.print_log_h);
    const double sd =
        std::hypot(population.edge_print_sd_share * expected, population.highlight_reading_sd);
    weight *= likelihood(*signs.edge_print, expected, sd);
  }
  if (signs.leader) {
    const double expected = factor * maximum;
    const double sd =
        std::hypot(population.leader_sd_share * expected, population.highlight_reading_sd);
    weight *= likelihood(*signs.leader, expected, sd);
  }
  return weight;
}

/// Spread of the roll's medians, log10 exposure.
struct Spread {
  double exposure = 0.0;
  /// Placing without the exposure error: roll and frames.
  double scene = 0.0;
  double range = 0.0;

  [[nodiscard]] double placing() const { return std::hypot(exposure, scene); }
};

Spread spread_of(int frames, const RollPopulation& population) {
  const double averaging = median_loss / std::sqrt(static_cast<double>(std::max(1, frames)));
  return {log10_of_a_stop * population.exposure_sd_stops,
          log10_of_a_stop * std::hypot(population.placement_roll_sd_stops,
                                       averaging * population.placement_frame_sd_stops),
          log10_of_a_stop * std::hypot(population.range_roll_sd_stops,
                                       averaging * population.range_frame_sd_stops)};
}

/// All that one contrast needs.
struct Weighing {
  const LightSigns& signs;
  const RollPopulation& population;
  Spread spread;
  std::vector<GridPoint> placing_grid;
  std::vector<GridPoint> range_grid;
  std::vector<double> factors;
};

/// Likelihood of shadow and highlight at each placing, the range integrated out.
std::vector<double> weigh_placings(const Weighing& w, const CurveTable& curve,
                                   const UsualExposures& usual, double factor) {
  const double pivot = w.population.meter_pivot_share;
  std::vector<double> sums(w.placing_grid.size(), 0.0);
  for (std::size_t m = 0; m < sums.size(); ++m) {
    const double placing = w.placing_grid[m].deviation * w.spread.placing();
    for (const GridPoint& point : w.range_grid) {
      const double range = point.deviation * w.spread.range;
      const double shadow = factor * curve.density(usual.shadow_log_h + placing - pivot * range);
      const double by_shadow =
          likelihood(*w.signs.shadow, shadow,
                     sd_of(w.population.shadow_reading_sd, w.population.curve_sd_share * shadow));
      if (by_shadow <= 0.0) {
        continue;
      }
      const double highlight =
          factor * curve.density(usual.highlight_log_h + placing + (1.0 - pivot) * range);
      sums[m] += point.weight * by_shadow *
                 likelihood(*w.signs.highlight, highlight,
                            sd_of(w.population.highlight_reading_sd,
                                  w.population.curve_sd_share * highlight));
    }
    sums[m] *= w.placing_grid[m].weight;
  }
  return sums;
}

std::vector<double> weigh_contrast(const Weighing& w, double contrast) {
  std::vector<double> sums(w.placing_grid.size(), 0.0);
  const double gain = w.population.speed_log_h_per_ln_contrast *
                      std::log(contrast / w.population.usual_contrast_index);
  for (const UsualCurveShape& shape : curve_shapes(w.population)) {
    const UsualExposures usual = usual_exposures(shape, w.population);
    const double maximum = maximum_density_at(contrast, shape.maximum_density, w.population);
    const CurveTable curve(UsualCurve({shape.toe_density, maximum}, contrast), gain);
    for (const double factor : w.factors) {
      const double patches =
          weight_of_patches(w.signs, curve, usual, maximum, factor, w.population);
      const std::vector<double> placed = weigh_placings(w, curve, usual, factor);
      for (std::size_t m = 0; m < sums.size(); ++m) {
        sums[m] += patches * placed[m];
      }
    }
  }
  return sums;
}

/// Fit (density of likelihood over all weighed) below which a roll is none of the population: usual
/// rolls reach 100 to 1000, the oddest rows of the expert's table 1, so this leaves one part in
/// 100000 of those.
constexpr double least_fit = 1e-5;

/// Leaves no points where nothing that was weighed fits.
void normalise(LightBelief& belief) {
  double sum = 0.0;
  for (const BeliefPoint& point : belief.points) {
    sum += point.weight;
  }
  if (!(sum > least_fit)) {
    belief.points.clear();
    return;
  }
  for (BeliefPoint& point : belief.points) {
    point.weight /= sum;
  }
}

}  // namespace

LightBelief believe(const LightSigns& signs, int frames, const ReadingScale& scale, const Aim& aim,
                    const RollPopulation& population) {
  Weighing weighing{
      signs, population, spread_of(frames, population), normal_grid(placings), normal_grid(ranges),
      {}};
  for (const double deviation : normal_slices(scales)) {
    weighing.factors.push_back(scale.factor * std::exp(deviation * scale.sd_share));
  }
  const Spread& spread = weighing.spread;
  // Bayes for two normal parts of a sum: how much of the placing is exposure.
  const double exposure_part =
      spread.exposure * spread.exposure / (spread.placing() * spread.placing());
  LightBelief belief;
  belief.exposure_sd_stops = spread.exposure * spread.scene / spread.placing() / log10_of_a_stop;
  for (const GridPoint& point : normal_grid(contrasts)) {
    const double contrast =
        std::clamp(aim.contrast_index * std::exp(point.deviation * population.contrast_sd_share),
                   least_contrast, greatest_contrast);
    const std::vector<double> weights = weigh_contrast(weighing, contrast);
    for (std::size_t m = 0; m < weights.size(); ++m) {
      const double placing = weighing.placing_grid[m].deviation * spread.placing();
      belief.points.push_back(
          {contrast, exposure_part * placing / log10_of_a_stop, point.weight * weights[m]});
    }
  }
  normalise(belief);
  return belief;
}

}  // namespace fogline
