// One small simulated scan, clean or tinted, its tint measured without and with the stock's clean
// base known.
#pragma once

#include <fogline/tint/tint.h>

#include <array>
#include <cstdint>
#include <optional>
#include <string>

namespace bench {

/// What was laid over the film. Sensitising and anti-halation dye are one family to three bands.
enum class TintFamily { clean, pink_dye, blue_dye, yellow, haze, image_stain };
inline constexpr int tint_families = 6;
const char* family_name(TintFamily family);
fogline::TintKind kind_of(TintFamily family);

struct TintCase {
  std::uint64_t seed = 0;
  std::string trouble;  // what was thrown
  std::string device;   // flatbed, camera, film scanner
  int bits = 16;
  TintFamily family = TintFamily::clean;
  /// In the most absorbing channel; for image_stain blue density at a silver density of 1.
  double amount = 0.0;
  /// Error of clear film's blue less red and of its green less both.
  std::optional<std::array<double, 2>> colour_error;
  /// Stock unknown, stock known.
  std::array<fogline::Tint, 2> measured;
};

/// Simulates, writes into `folder`, measures, deletes. The scan, its device and its film are those
/// of the kind "tiny"; only the tint is laid on anew.
TintCase run_tint_case(std::uint64_t seed, bool tinted, const std::string& folder);

}  // namespace bench
