#include "simulator/wedge_scan.h"

#include "simulator/filters.h"
#include "simulator/picture_files.h"
#include "simulator/random.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace filmsim {
namespace {

constexpr double kOpaque = 4.0;
constexpr double kJointDensity = 3.5;
constexpr double kTapeDensity = 0.08;
constexpr double kMmPerInch = 25.4;

/// Where a pixel lies on the wedge, mm along (0 the first step's middle) and across.
class WedgePlace {
 public:
  explicit WedgePlace(const WedgePlan& plan) : plan_(plan) {
    const double turn = plan.direction_deg * std::numbers::pi / 180.0;
    cos_ = std::cos(turn);
    sin_ = std::sin(turn);
    const double length = plan.pitch_mm * static_cast<double>(plan.densities.size());
    const double margin = plan.margin_mm;
    width_px =
        static_cast<int>((std::abs(cos_) * length + std::abs(sin_) * plan.width_mm + 2 * margin) *
                         plan.pixels_per_mm);
    height_px =
        static_cast<int>((std::abs(sin_) * length + std::abs(cos_) * plan.width_mm + 2 * margin) *
                         plan.pixels_per_mm);
  }

  [[nodiscard]] Point mm(double x_px, double y_px) const {
    const double x = (x_px - 0.5 * width_px) / plan_.pixels_per_mm;
    const double y = (y_px - 0.5 * height_px) / plan_.pixels_per_mm;
    return {x * cos_ + y * sin_ + half_length(), y * cos_ - x * sin_};
  }
  [[nodiscard]] Point px(double along, double across) const {
    const double a = along - half_length();
    return {0.5 * width_px + (a * cos_ - across * sin_) * plan_.pixels_per_mm,
            0.5 * height_px + (a * sin_ + across * cos_) * plan_.pixels_per_mm};
  }

  int width_px = 0;
  int height_px = 0;

 private:
  [[nodiscard]] double half_length() const {
    return 0.5 * plan_.pitch_mm * static_cast<double>(plan_.densities.size() - 1);
  }

  const WedgePlan& plan_;
  double cos_ = 1.0;
  double sin_ = 0.0;
};

/// Diffuse density at a place, and whether it is silver (which scatters).
struct Seen {
  double density = 0.0;
  bool silver = false;
  bool bare = false;
};

Seen seen_at(const WedgePlan& plan, const Point& mm) {
  const int steps = static_cast<int>(plan.densities.size());
  const int step = static_cast<int>(std::floor(mm.x / plan.pitch_mm + 0.5));
  const double off = std::abs(mm.x - step * plan.pitch_mm);
  const bool within = std::abs(mm.y) <= 0.5 * plan.width_mm && step >= 0 && step < steps;
  if (!within) {
    const double length = plan.pitch_mm * (steps - 0.5);
    const double beyond = std::max(
        {std::abs(mm.y) - 0.5 * plan.width_mm, -mm.x - 0.5 * plan.pitch_mm, mm.x - length});
    const bool masked = plan.bare_mm >= 0.0 && beyond > plan.bare_mm;
    return {masked ? kOpaque : 0.0, false, !masked};
  }
  if (off > 0.5 * (plan.pitch_mm - plan.joint_mm)) {
    if (plan.joint == WedgeJoint::kDarkLine) return {kJointDensity, false, false};
    if (plan.joint == WedgeJoint::kLoose) return {0.0, false, true};
  }
  Seen seen{plan.densities[static_cast<std::size_t>(step)], true, false};
  if (step == plan.dirty_step) seen.density += plan.dirt_density;
  if (step == plan.scratched_step && std::abs(off - 0.15 * mm.y - 0.1) < 0.05) {
    seen.density *= 0.3;
  }
  const bool outer = step == 0 ? mm.x < 0.0 : step == steps - 1 && mm.x > step * plan.pitch_mm;
  if (plan.tape && outer && std::abs(mm.y) > 0.2 * plan.width_mm) seen.density += kTapeDensity;
  return seen;
}

}  // namespace

WedgeScan render_wedge(const WedgePlan& plan) {
  const WedgePlace place(plan);
  Plane light(place.width_px, place.height_px);
  std::vector<std::size_t> bare;
  const double area_mm2 = 1.0 / (plan.pixels_per_mm * plan.pixels_per_mm);
  const double grain = plan.granularity / std::sqrt(area_mm2);
  Random random(plan.seed, 7);
  constexpr int kSide = 2;
  for (int y = 0; y < light.height; ++y) {
    for (int x = 0; x < light.width; ++x) {
      double sum = 0.0;
      int bare_parts = 0;
      double density = 0.0;
      for (int k = 0; k < kSide * kSide; ++k) {
        const Seen seen =
            seen_at(plan, place.mm(x + (k % kSide + 0.5) / kSide, y + (k / kSide + 0.5) / kSide));
        const double read =
            seen.silver
                ? static_cast<double>(seen_density(static_cast<float>(seen.density), plan.callier))
                : seen.density;
        sum += std::pow(10.0, -read) / (kSide * kSide);
        density = std::max(density, seen.silver ? seen.density : 0.0);
        bare_parts += seen.bare ? 1 : 0;
      }
      const double noise = grain * std::sqrt(density) * static_cast<double>(random.quick_normal());
      light.at(x, y) = static_cast<float>(sum * std::pow(10.0, -noise));
      if (bare_parts == kSide * kSide) bare.push_back(light.index(x, y));
    }
  }
  std::vector<Plane> planes(3, light);
  ScannerSettings scanner = plan.scanner;
  expose_sensor(planes, scanner, plan.pixels_per_mm, bare, derived_seed(plan.seed, 31));
  WedgeScan scan;
  scan.bare_level = scanner.bare_level;
  bend(planes, scanner.response);
  scan.picture = encode(planes, plan.encoding, scanner.sharpening);
  for (std::size_t i = 0; i < plan.densities.size(); ++i) {
    scan.middles_px.push_back(place.px(plan.pitch_mm * static_cast<double>(i), 0.0));
  }
  return scan;
}

void write_wedge(const WedgeScan& scan, const WedgePlan& plan, const std::string& path) {
  write_tiff(scan.picture, plan.encoding, plan.pixels_per_mm * kMmPerInch, path);
}

Picture picture_of_table(const std::vector<TableStep>& table, int bits, int step_px,
                         double surround_code, std::uint64_t seed) {
  Picture picture;
  picture.bits = bits;
  picture.channels = 1;
  const int margin = step_px;
  picture.width = static_cast<int>(table.size()) * step_px + 2 * margin;
  picture.height = 3 * step_px;
  picture.codes.resize(static_cast<std::size_t>(picture.width) *
                       static_cast<std::size_t>(picture.height));
  Random random(seed);
  for (int y = 0; y < picture.height; ++y) {
    for (int x = 0; x < picture.width; ++x) {
      const int step = (x - margin) / step_px;
      const bool within = y >= step_px / 2 && y < picture.height - step_px / 2 && x >= margin &&
                          step < static_cast<int>(table.size());
      const TableStep& shown = table[static_cast<std::size_t>(within ? step : 0)];
      const double code =
          within ? shown.code + shown.deviation * static_cast<double>(random.quick_normal())
                 : surround_code;
      picture.codes[static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) +
                    static_cast<std::size_t>(x)] =
          static_cast<std::uint16_t>(std::clamp(std::round(code), 0.0, picture.top() * 1.0));
    }
  }
  return picture;
}

}  // namespace filmsim
