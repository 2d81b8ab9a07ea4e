#include "simulator/wedge_sampling.h"

#include "simulator/random.h"
#include "simulator/scenario_sampling.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace filmsim {
namespace {

constexpr std::uint64_t kStream = 4711;

std::vector<double> sample_densities(Random& random) {
  constexpr std::array<int, 6> kCounts{5, 10, 11, 21, 31, 41};
  const int count =
      random.chance(0.6) ? 21 : kCounts[static_cast<std::size_t>(random.integer(0, 5))];
  const double range = count < 8 ? random.uniform(1.6, 2.4) : random.uniform(2.6, 3.3);
  std::vector<double> densities;
  double density = random.uniform(0.03, 0.12);
  for (int i = 0; i < count; ++i) {
    densities.push_back(density);
    density += range / (count - 1) * random.uniform(0.85, 1.15);
  }
  return densities;
}

/// The certificate's errors: half of the variance is common to all steps and grows to its full size
/// at density 1, half is each step's own.
std::vector<double> certified(const std::vector<double>& densities, double u95, Random& random) {
  const double part = u95 / 1.96 / std::sqrt(2.0);
  const double common = random.normal(0.0, part);
  std::vector<double> told;
  for (const double density : densities) {
    told.push_back(density + common * std::min(1.0, density) + random.normal(0.0, part));
  }
  for (std::size_t i = 1; i < told.size(); ++i) told[i] = std::max(told[i], told[i - 1] + 0.002);
  return told;
}

void sample_layout(WedgePlan& wedge, bool large, Random& random) {
  const int quarter = random.integer(0, 3);
  wedge.direction_deg = 90.0 * quarter + random.uniform(-3.0, 3.0);
  const auto count = static_cast<double>(wedge.densities.size());
  wedge.pitch_mm = std::clamp(random.uniform(90.0, 160.0) / count, 3.0, 14.0);
  wedge.width_mm = random.uniform(9.0, 25.0);
  wedge.bare_mm = random.chance(0.6) ? random.uniform(2.0, 6.0) : -1.0;
  wedge.margin_mm =
      wedge.bare_mm > 0.0 ? wedge.bare_mm + random.uniform(6.0, 14.0) : random.uniform(5.0, 12.0);
  wedge.pixels_per_mm = large ? random.uniform(8.0, 16.0) : 5.0;
  if (!large) return;
  const double pick = random.uniform();
  if (pick < 0.2) {
    wedge.joint = WedgeJoint::kDarkLine;
  } else if (pick < 0.35 && wedge.densities.size() < 15) {
    wedge.joint = WedgeJoint::kLoose;
    wedge.joint_mm = 0.25 * wedge.pitch_mm;
  }
  if (random.chance(0.3)) {
    wedge.dirty_step = random.integer(2, static_cast<int>(wedge.densities.size()) - 3);
    wedge.dirt_density = random.uniform(0.06, 0.2);
  }
  if (random.chance(0.3)) {
    wedge.scratched_step = random.integer(0, static_cast<int>(wedge.densities.size()) - 1);
  }
  wedge.tape = random.chance(0.2);
}

}  // namespace

CalibratedPair sample_pair(const WedgeKind& kind, std::uint64_t seed) {
  CalibratedPair pair;
  pair.strip = sample_scenario("tiny", seed);
  Random random(seed, kStream);
  ScannerSettings& scanner = pair.strip.scanner;
  // Flatbeds and cameras: what people calibrate; the bare light stays below the top code.
  scanner.bare_level = std::min(scanner.bare_level, 0.92);
  scanner.sharpening = 0.0;
  if (!kind.stray_light) scanner.glare.share = 0.0;
  scanner.response = sample_response(random);
  pair.strip.encoding.tone_told = ToneTold::kIccProfile;
  WedgePlan& wedge = pair.wedge;
  wedge.seed = derived_seed(seed, 91);
  wedge.scanner = scanner;
  wedge.encoding = pair.strip.encoding;
  wedge.encoding.file = FileKind::kTiff;
  wedge.callier =
      kind.like_silver ? scanner.callier : 1.0 + (scanner.callier - 1.0) * random.uniform(0.8, 1.2);
  wedge.densities = sample_densities(random);
  pair.certificate_u95 = kind.large && random.chance(0.3) ? 0.02 : 0.01;
  wedge.certified = certified(wedge.densities, pair.certificate_u95, random);
  sample_layout(wedge, kind.large, random);
  WedgePlan& patches = pair.patches;
  patches = wedge;
  patches.seed = derived_seed(seed, 92);
  patches.callier = scanner.callier;
  patches.dirty_step = patches.scratched_step = -1;
  patches.tape = false;
  patches.joint = WedgeJoint::kTouching;
  patches.densities.clear();
  double density = random.uniform(0.05, 0.3);
  while (density < 3.1) {
    patches.densities.push_back(density);
    density += random.uniform(0.2, 0.45);
  }
  patches.certified = patches.densities;
  patches.pitch_mm = random.uniform(6.0, 12.0);
  patches.width_mm = random.uniform(9.0, 25.0);
  patches.direction_deg = 90.0 * random.integer(0, 3);
  return pair;
}

}  // namespace filmsim
