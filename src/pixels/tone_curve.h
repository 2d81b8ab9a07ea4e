#pragma once

#include <fogline/base/quantity.h>
#include <fogline/base/scan_source.h>

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

namespace fogline {

/// A sampled curve from code (0 to 1, evenly spaced nodes) to linear light, per channel; a grey
/// curve stands at index 0.
using SampledCurve = PerChannel<std::vector<float>>;

/// How codes become linear light: a named law or a sampled curve, after an optional black and
/// white level. Light is held in 0 to 1.
struct ToneCurve {
  Transfer transfer;
  /// For TransferKind::curve only.
  std::shared_ptr<const SampledCurve> sampled;
  /// Code, as a share of the full code, that stands for no light and for full light.
  double black_level = 0.0;
  double white_level = 1.0;

  /// Linear light of a code given as a share (0 to 1) of the full code.
  [[nodiscard]] double light(double code, int channel) const;
  /// The other way round: the lowest code share that gives this light.
  [[nodiscard]] double code(double wanted_light, int channel) const;
};

/// IEC 61966-2-1 decoding (sRGB), code and light 0 to 1.
double light_from_srgb(double code);

/// The curve as a named law (linear, sRGB, a power) where it equals one everywhere within 1e-4 of
/// full light, else as a sampled curve. `channels` 1 or 3.
ToneCurve tone_curve_from_samples(SampledCurve samples, int channels, TransferSource source);

/// Light as a whole number: 2^30 is full light. The sums of a whole picture fit 64 bits.
inline constexpr int light_fraction_bits = 30;
inline constexpr double full_light = 1 << light_fraction_bits;

/// For each channel a table from code to fixed-point light; channels with one curve share one.
struct LightTables {
  PerChannel<std::shared_ptr<const std::vector<std::uint32_t>>> of_channel;
};

/// Tables for `codes` codes (256 or 65,536); code `codes - 1` is the full code.
LightTables light_tables(const ToneCurve& curve, int codes, int channels);

}  // namespace fogline
