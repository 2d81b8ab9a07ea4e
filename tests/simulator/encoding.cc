#include "simulator/encoding.h"

#include "simulator/filters.h"

#include <cmath>

namespace filmsim {
namespace {

constexpr int kTableSteps = 4096;

// Encoding through a table over the square root of light, where all the curves are tame.
std::vector<float> encoding_table(const EncodingSettings& settings) {
  std::vector<float> table(kTableSteps + 2);
  for (std::size_t i = 0; i < table.size(); ++i) {
    const double root = std::min(1.0, static_cast<double>(i) / kTableSteps);
    table[i] = static_cast<float>(encoded_from_light(root * root, settings));
  }
  return table;
}

void encode_plane(Plane& plane, const std::vector<float>& table) {
  for (float& value : plane.values) {
    const float root = std::sqrt(std::clamp(value, 0.0F, 1.0F)) * kTableSteps;
    const auto i = static_cast<std::size_t>(root);
    value = table[i] + (root - static_cast<float>(i)) * (table[i + 1] - table[i]);
  }
}

void sharpen(Plane& plane, double amount) {
  constexpr double kRadiusPx = 1.0;
  if (amount <= 0.0) return;
  Plane soft = plane;
  gaussian_blur(soft, kRadiusPx, kRadiusPx);
  for (std::size_t i = 0; i < plane.values.size(); ++i) {
    plane.values[i] += static_cast<float>(amount) * (plane.values[i] - soft.values[i]);
  }
}

Plane visual_mix(const std::vector<Plane>& planes) {
  Plane mix(planes[0].width, planes[0].height);
  for (std::size_t i = 0; i < mix.values.size(); ++i) {
    mix.values[i] = 0.2126F * planes[0].values[i] + 0.7152F * planes[1].values[i] +
                    0.0722F * planes[2].values[i];
  }
  return mix;
}

}  // namespace

std::string transfer_name(Transfer transfer) {
  switch (transfer) {
    case Transfer::kLinear:
      return "linear";
    case Transfer::kSrgb:
      return "srgb";
    case Transfer::kPower:
      return "power";
  }
  return "unknown";
}

double encoded_from_light(double light, const EncodingSettings& settings) {
  switch (settings.transfer) {
    case Transfer::kLinear:
      return light;
    case Transfer::kSrgb:
      return light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1.0 / 2.4) - 0.055;
    case Transfer::kPower:
      return std::pow(light, 1.0 / settings.exponent);
  }
  return light;
}

double light_from_encoded(double level, const EncodingSettings& settings) {
  switch (settings.transfer) {
    case Transfer::kLinear:
      return level;
    case Transfer::kSrgb:
      return level <= 0.04045 ? level / 12.92 : std::pow((level + 0.055) / 1.055, 2.4);
    case Transfer::kPower:
      return std::pow(level, settings.exponent);
  }
  return level;
}

Picture encode(const std::vector<Plane>& signal, const EncodingSettings& settings,
               double sharpening) {
  std::vector<Plane> planes = signal;
  if (settings.channels == 1) planes = {visual_mix(signal)};
  Picture picture{
      planes[0].width, planes[0].height, static_cast<int>(planes.size()), settings.bits, {}};
  picture.codes.resize(planes[0].values.size() * planes.size());
  const std::vector<float> table = encoding_table(settings);
  const auto low = static_cast<float>(settings.stretch_low);
  const auto scale = static_cast<float>(1.0 / (settings.stretch_high - settings.stretch_low));
  const auto top = static_cast<float>(picture.top());
  for (std::size_t c = 0; c < planes.size(); ++c) {
    encode_plane(planes[c], table);
    sharpen(planes[c], sharpening);
    for (std::size_t i = 0; i < planes[c].values.size(); ++i) {
      float level = std::clamp((planes[c].values[i] - low) * scale, 0.0F, 1.0F);
      if (settings.inverted) level = 1.0F - level;
      picture.codes[i * planes.size() + c] = static_cast<std::uint16_t>(level * top + 0.5F);
    }
  }
  return picture;
}

}  // namespace filmsim
