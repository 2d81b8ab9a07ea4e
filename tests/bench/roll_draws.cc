#include "roll_draws.h"

#include "simulator/scene.h"

#include <algorithm>
#include <cmath>

namespace bench {

namespace {

constexpr std::size_t scene_pool_size = 4000;
constexpr std::size_t curve_pool_size = 800;
/// Scenes this near in range are as good as one drawn for the frame.
constexpr int scene_neighbours = 40;
/// Scenes are drawn at this many pixels a millimetre: percentiles need no more.
constexpr int scene_width = 72;
constexpr int scene_height = 48;
/// Noise of readings (common practice: 0.02 to 0.06).
constexpr double shadow_noise = 0.02;
constexpr double highlight_noise = 0.03;
constexpr double leader_log_h = 3.5;
/// Glare hides what is denser.
constexpr double darkest_reading = 2.3;

struct ScenePercentiles {
  double log_range = 0.0;
  double dark = 0.0;
  double bright = 0.0;
  bool night = false;
};

struct PooledRoll {
  filmsim::FaultyRoll roll;
  filmsim::FilmCurve curve;
};

}  // namespace

class Pools {
 public:
  explicit Pools(filmsim::Random& random) {
    while (rolls_.size() < curve_pool_size) {
      const filmsim::FaultyRoll roll = filmsim::sample_faulty_roll(random);
      if (!roll.faults.exposed || !roll.faults.developed || roll.faults.fogged) {
        continue;
      }
      rolls_.push_back({roll, filmsim::FilmCurve(roll.roll.stock.curve)});
    }
    for (std::size_t i = 0; i < scene_pool_size; ++i) {
      filmsim::FaultyRoll roll = rolls_.front().roll;
      filmsim::redraw_subjects(roll, random);
      const filmsim::FramePlan frame = filmsim::sample_faulty_frame(roll, random);
      std::vector<float> values =
          filmsim::scene_log_luminance(frame.scene, scene_width, scene_height).values;
      std::sort(values.begin(), values.end());
      const auto at = [&](double share) {
        return static_cast<double>(
            values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))]);
      };
      scenes_.push_back({frame.scene.log_range, at(0.02), at(0.98),
                         frame.scene.kind == filmsim::SceneKind::kNight});
    }
    std::sort(scenes_.begin(), scenes_.end(),
              [](const auto& a, const auto& b) { return a.log_range < b.log_range; });
  }

  [[nodiscard]] const PooledRoll& roll(filmsim::Random& random) const {
    return rolls_[static_cast<std::size_t>(random.integer(0, static_cast<int>(rolls_.size()) - 1))];
  }

  /// A scene of about this range, by night or not.
  [[nodiscard]] const ScenePercentiles& scene(double log_range, bool night,
                                              filmsim::Random& random) const {
    const auto near = std::lower_bound(
        scenes_.begin(), scenes_.end(), log_range,
        [](const ScenePercentiles& scene, double range) { return scene.log_range < range; });
    const int middle = static_cast<int>(near - scenes_.begin());
    constexpr int tries = 200;
    for (int i = 0; i < tries; ++i) {
      const int pick = std::clamp(middle + random.integer(-scene_neighbours, scene_neighbours), 0,
                                  static_cast<int>(scenes_.size()) - 1);
      if (scenes_[static_cast<std::size_t>(pick)].night == night) {
        return scenes_[static_cast<std::size_t>(pick)];
      }
    }
    return scenes_[scenes_.size() / 2];
  }

 private:
  std::vector<PooledRoll> rolls_;
  std::vector<ScenePercentiles> scenes_;
};

namespace {

double middle_of(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : 0.5 * (values[half - 1] + values[half]);
}

RollReading draw_roll(const Pools& pools, filmsim::Random& random) {
  const PooledRoll& pooled = pools.roll(random);
  const filmsim::CurveSettings& curve = pooled.roll.roll.stock.curve;
  filmsim::FaultyRoll roll = pooled.roll;
  filmsim::redraw_subjects(roll, random);
  RollReading reading;
  reading.faults = roll.faults;
  reading.frames = random.integer(4, 6);
  std::vector<double> shadows;
  std::vector<double> highlights;
  const double scale = random.uniform(1.0, 1.2) * std::exp(random.normal(0.0, 0.02));
  const auto net = [&](double log_h) {
    return scale * pooled.curve.density(curve.speed_point_log_h + log_h);
  };
  constexpr double log10_of_a_stop = 0.30103;
  const double error = log10_of_a_stop * reading.faults.exposure_error_stops;
  std::vector<double> dark;
  std::vector<double> bright;
  for (int i = 0; i < reading.frames; ++i) {
    const filmsim::FramePlan frame = filmsim::sample_faulty_frame(roll, random);
    const ScenePercentiles& scene =
        pools.scene(frame.scene.log_range, frame.scene.kind == filmsim::SceneKind::kNight, random);
    dark.push_back(frame.mean_log_h + scene.dark - error);
    bright.push_back(frame.mean_log_h + scene.bright - error);
    shadows.push_back(net(frame.mean_log_h + scene.dark));
    highlights.push_back(net(frame.mean_log_h + scene.bright));
  }
  reading.shadow_log_h = middle_of(dark);
  reading.highlight_log_h = middle_of(bright);
  reading.shadow = std::max(0.0, middle_of(shadows) + random.normal(0.0, shadow_noise));
  reading.highlight = std::max(0.0, middle_of(highlights) + random.normal(0.0, highlight_noise));
  reading.edge_print = net(roll.roll.stock.edge_print_log_h) + random.normal(0.0, highlight_noise);
  if (random.chance(0.3)) {
    reading.leader = std::min(darkest_reading, net(leader_log_h));
  }
  return reading;
}

}  // namespace

RollDrawer::RollDrawer(std::uint64_t seed) {
  filmsim::Random random(seed, 815);
  pools_ = std::make_unique<Pools>(random);
}

RollDrawer::~RollDrawer() = default;

std::vector<RollReading> RollDrawer::draw(std::size_t count, std::uint64_t seed) const {
  filmsim::Random random(seed, 816);
  std::vector<RollReading> readings;
  readings.reserve(count);
  while (readings.size() < count) {
    readings.push_back(draw_roll(*pools_, random));
  }
  return readings;
}

fogline::RollMeasurement as_measurement(const RollReading& reading) {
  constexpr double base = 0.30;
  const auto density = [&](double net) {
    return fogline::Quantity{base + net, 0.05, {}, {}, {}, false};
  };
  fogline::RollMeasurement roll;
  fogline::ScanMeasurement scan;
  scan.fitness = fogline::Fitness::comparable;
  scan.info.bits = 16;
  scan.info.transfer.source = fogline::TransferSource::icc_profile;
  scan.base_fog = fogline::BaseFog{density(0.0), {}, fogline::BaseFogSource::rebate, {}};
  scan.edge_print = density(reading.edge_print);
  if (reading.leader) {
    scan.leader = density(*reading.leader);
    scan.leader->at_least = *reading.leader >= darkest_reading;
  }
  fogline::StripMeasurement strip;
  strip.format = fogline::FilmFormat::f135;
  scan.strips.push_back(strip);
  for (int i = 0; i < reading.frames; ++i) {
    fogline::FrameMeasurement frame;
    frame.number = i + 1;
    frame.tone.shadow = density(reading.shadow);
    frame.tone.highlight = density(reading.highlight);
    frame.tone.range = density(reading.highlight - reading.shadow - base);
    scan.frames.push_back(frame);
  }
  roll.scans.push_back(scan);
  return roll;
}

}  // namespace bench
