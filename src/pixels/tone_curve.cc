#include "pixels/tone_curve.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace fogline {

namespace {

/// Largest difference in light by which a curve may differ from a named law and still bear its
/// name: above the rounding of 16-bit profile tables (1.5e-5), far below a visible change of law
/// (powers 2.2 and 563/256 differ by 1.3e-4).
constexpr double same_law_tolerance = 1e-4;

/// Powers between which a tone curve is believed to be one.
constexpr double smallest_exponent = 0.2;
constexpr double largest_exponent = 5.0;

double interpolate(const std::vector<float>& nodes, double position) {
  const double place = std::clamp(position, 0.0, 1.0) * static_cast<double>(nodes.size() - 1);
  const auto below = std::min(static_cast<std::size_t>(place), nodes.size() - 2);
  const double share = place - static_cast<double>(below);
  return static_cast<double>(nodes[below]) * (1.0 - share) +
         static_cast<double>(nodes[below + 1]) * share;
}

template <typename Law>
bool follows(const SampledCurve& samples, int channels, const Law& law) {
  for (int c = 0; c < channels; ++c) {
    const auto& nodes = samples[static_cast<std::size_t>(c)];
    for (std::size_t i = 0; i < nodes.size(); ++i) {
      const double code = static_cast<double>(i) / static_cast<double>(nodes.size() - 1);
      if (std::abs(static_cast<double>(nodes[i]) - law(code)) > same_law_tolerance) {
        return false;
      }
    }
  }
  return true;
}

/// The power that gives the curve's own light at half code; absent where none could.
std::optional<double> exponent_at_half(const std::vector<float>& nodes) {
  const double light = interpolate(nodes, 0.5);
  if (light <= 0.0 || light >= 1.0) {
    return std::nullopt;
  }
  const double exponent = std::log(light) / std::log(0.5);
  const bool plausible = exponent >= smallest_exponent && exponent <= largest_exponent;
  return plausible ? std::optional<double>(exponent) : std::nullopt;
}

}  // namespace

double light_from_srgb(double code) {
  return code <= 0.04045 ? code / 12.92 : std::pow((code + 0.055) / 1.055, 2.4);
}

double ToneCurve::light(double code, int channel) const {
  const double share = std::clamp((code - black_level) / (white_level - black_level), 0.0, 1.0);
  switch (transfer.kind) {
    case TransferKind::linear:
      return share;
    case TransferKind::srgb:
      return light_from_srgb(share);
    case TransferKind::power:
      return std::pow(share, transfer.exponent.value_or(1.0));
    case TransferKind::curve:
      return std::clamp(interpolate((*sampled)[static_cast<std::size_t>(channel)], share), 0.0,
                        1.0);
    case TransferKind::scanner:
      return std::clamp(
          transfer.scanner->of_channel[static_cast<std::size_t>(channel)].light_of(share), 0.0,
          1.0);
  }
  return share;
}

double ToneCurve::code(double wanted_light, int channel) const {
  // Every curve rises, so halving the interval finds the code of any.
  constexpr int halvings = 40;
  double low = 0.0;
  double high = 1.0;
  for (int i = 0; i < halvings; ++i) {
    const double middle = 0.5 * (low + high);
    (light(middle, channel) < wanted_light ? low : high) = middle;
  }
  return high;
}

ToneCurve tone_curve_from_samples(SampledCurve samples, int channels, TransferSource source) {
  ToneCurve curve;
  curve.transfer.source = source;
  const auto exponent = exponent_at_half(samples[0]);
  if (follows(samples, channels, [](double code) { return code; })) {
    curve.transfer.kind = TransferKind::linear;
  } else if (follows(samples, channels, light_from_srgb)) {
    curve.transfer.kind = TransferKind::srgb;
  } else if (exponent &&
             follows(samples, channels, [&](double code) { return std::pow(code, *exponent); })) {
    curve.transfer.kind = TransferKind::power;
    curve.transfer.exponent = exponent;
  } else {
    curve.transfer.kind = TransferKind::curve;
    curve.sampled = std::make_shared<const SampledCurve>(std::move(samples));
  }
  return curve;
}

LightTables light_tables(const ToneCurve& curve, int codes, int channels) {
  LightTables tables;
  const bool one_for_all =
      curve.transfer.kind != TransferKind::curve && curve.transfer.kind != TransferKind::scanner;
  for (int c = 0; c < channels; ++c) {
    const auto slot = static_cast<std::size_t>(c);
    if (c > 0 && one_for_all) {
      tables.of_channel[slot] = tables.of_channel[0];
      continue;
    }
    auto table = std::make_shared<std::vector<std::uint32_t>>(static_cast<std::size_t>(codes));
    for (int code = 0; code < codes; ++code) {
      const double share = static_cast<double>(code) / static_cast<double>(codes - 1);
      (*table)[static_cast<std::size_t>(code)] =
          static_cast<std::uint32_t>(std::lround(curve.light(share, c) * full_light));
    }
    tables.of_channel[slot] = std::move(table);
  }
  return tables;
}

}  // namespace fogline
