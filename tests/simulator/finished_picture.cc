#include "simulator/finished_picture.h"

#include "simulator/cells.h"
#include "simulator/encoding.h"
#include "simulator/filters.h"

#include <algorithm>
#include <cmath>

namespace filmsim {
namespace {

const EncodingSettings& display_curve() {
  static const EncodingSettings kSettings = [] {
    EncodingSettings settings;
    settings.transfer = Transfer::kSrgb;
    return settings;
  }();
  return kSettings;
}

void colour(std::vector<Plane>& signal, const FinishedPicture& picture) {
  const auto saturation = static_cast<float>(picture.saturation);
  for (std::size_t i = 0; i < signal[0].values.size(); ++i) {
    float mean = 0.0F;
    for (std::size_t c = 0; c < signal.size(); ++c) {
      // The sensor's own end, before any gain.
      const float held = std::clamp(signal[c].values[i], 0.0F, 1.0F);
      signal[c].values[i] = held * static_cast<float>(picture.balance[c]);
      mean += signal[c].values[i] / static_cast<float>(signal.size());
    }
    for (Plane& plane : signal) {
      plane.values[i] = std::max(0.0F, mean + saturation * (plane.values[i] - mean));
    }
  }
}

// Values by a table over the square root of what comes in, 0 to 1.
template <typename Curve>
void by_table(Plane& plane, const Curve& curve) {
  constexpr int kSteps = 4096;
  std::vector<float> table(kSteps + 2);
  for (std::size_t i = 0; i < table.size(); ++i) {
    const double root = std::min(1.0, static_cast<double>(i) / kSteps);
    table[i] = static_cast<float>(curve(root * root));
  }
  for (float& value : plane.values) {
    const float root = std::sqrt(std::clamp(value, 0.0F, 1.0F)) * kSteps;
    const auto i = static_cast<std::size_t>(root);
    value = table[i] + (root - static_cast<float>(i)) * (table[i + 1] - table[i]);
  }
}

void raise_local_contrast(Plane& plane, const FinishedPicture& picture, double pixels_per_mm) {
  if (picture.local_contrast <= 0.0) return;
  constexpr double kCellsPerRadius = 3.0;
  const double radius_px = picture.local_radius_mm * pixels_per_mm;
  const int cell = std::max(1, static_cast<int>(std::lround(radius_px / kCellsPerRadius)));
  Plane soft = cell_means(plane, cell);
  wide_blur(soft, radius_px / cell, radius_px / cell);
  // v + a (v - soft) is a mixture too, by a share below nothing.
  mix_in(plane, soft, cell, static_cast<float>(-picture.local_contrast));
}

void reduce_noise(Plane& plane, double share) {
  constexpr double kReachPx = 1.6;
  constexpr float kFaintLevel = 0.03F;  // differences well above stay
  if (share <= 0.0) return;
  Plane soft = plane;
  gaussian_blur(soft, kReachPx, kReachPx);
  for (std::size_t i = 0; i < plane.values.size(); ++i) {
    const float difference = soft.values[i] - plane.values[i];
    const float strong = difference / kFaintLevel;
    plane.values[i] += static_cast<float>(share) * difference * std::exp(-strong * strong);
  }
}

void sharpen(Plane& plane, double amount, double radius_px) {
  if (amount <= 0.0) return;
  Plane soft = plane;
  gaussian_blur(soft, radius_px, radius_px);
  for (std::size_t i = 0; i < plane.values.size(); ++i) {
    plane.values[i] += static_cast<float>(amount) * (plane.values[i] - soft.values[i]);
  }
}

}  // namespace

double finished_level(double level, const FinishedPicture& picture) {
  const double span = picture.white_level - picture.black_level;
  const double v = std::clamp((level - picture.black_level) / span, 0.0, 1.0);
  const double s = v + picture.s_curve * (v * v * (3.0 - 2.0 * v) - v);
  const double rolled = s * (1.0 + picture.roll_off) / (1.0 + picture.roll_off * s);
  return picture.toe_lift + (1.0 - picture.toe_lift) * rolled;
}

void finish(std::vector<Plane>& signal, const FinishedPicture& picture, double pixels_per_mm) {
  colour(signal, picture);
  for (Plane& plane : signal) {
    by_table(plane, [&](double light) {
      return finished_level(encoded_from_light(light, display_curve()), picture);
    });
    raise_local_contrast(plane, picture, pixels_per_mm);
    reduce_noise(plane, picture.noise_reduction);
    sharpen(plane, picture.sharpening, picture.sharpening_radius_px);
    by_table(plane, [](double level) { return light_from_encoded(level, display_curve()); });
  }
}

}  // namespace filmsim
