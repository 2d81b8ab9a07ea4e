#include "tint/tint_population.h"

#include <array>
#include <cmath>

namespace fogline {

namespace {

/// Middles of broad red, green and blue bands, nm.
constexpr PerChannel<double> band_nm{610.0, 540.0, 450.0};

void share_equally(std::vector<TintSignature>& signatures, double least_other, double step,
                   bool green_first, double weight) {
  const std::array<double, 3> blues{0.0, 0.15, 0.3};
  for (int i = 0; i < 3; ++i) {
    const double other = least_other + i * step;
    for (const double blue : blues) {
      signatures.push_back({green_first ? PerChannel<double>{other, 1.0, blue}
                                        : PerChannel<double>{1.0, other, blue},
                            weight / 9.0});
    }
  }
}

/// Pink to violet dye takes green most and red from nothing to a half; blue to green dye takes red
/// most and a part of green. Either takes little blue (common practice, no source).
VeilPopulation make_dye() {
  VeilPopulation dye{TintKind::dye_left, 0.01, 0.5, {}, {{0.0, 0.5}, {0.05, 0.3}, {0.15, 0.2}}};
  share_equally(dye.signatures, 0.0, 0.3, true, 0.6);
  share_equally(dye.signatures, 0.15, 0.3, false, 0.4);
  return dye;
}

/// Scattering grows towards blue as a power of the wavelength: 4 where the particles are far
/// smaller than it, falling to 0 where they are as large (van de Hulst 1957, Light Scattering by
/// Small Particles, chapters 6 and 11). Unfixed halide lies between. Milky film is patchy.
VeilPopulation make_haze() {
  VeilPopulation haze{
      TintKind::fixer_haze, 0.02, 1.0, {}, {{0.05, 0.15}, {0.15, 0.3}, {0.3, 0.4}, {0.5, 0.15}}};
  for (const Weighted& power : {Weighted{1.0, 0.15}, Weighted{1.5, 0.2}, Weighted{2.0, 0.3},
                                Weighted{2.5, 0.2}, Weighted{3.0, 0.15}}) {
    TintSignature signature;
    signature.weight = power.weight;
    for (std::size_t c = 0; c < band_nm.size(); ++c) {
      signature.share[c] = std::pow(band_nm[2] / band_nm[c], power.value);
    }
    haze.signatures.push_back(signature);
  }
  return haze;
}

/// Straw yellow: blue most, a part of green, hardly red. Oxidised developer leaves it even, sulfur
/// patchy (common practice, no source).
VeilPopulation make_yellow() {
  return {TintKind::yellow_stain,
          0.01,
          0.5,
          {{{0.0, 0.1, 1.0}, 0.25},
           {{0.0, 0.25, 1.0}, 0.35},
           {{0.0, 0.4, 1.0}, 0.2},
           {{0.1, 0.3, 1.0}, 0.2}},
          {{0.0, 0.65}, {0.05, 0.25}, {0.25, 0.1}}};
}

/// The mask of colour negative stock: about 0.25 red, 0.6 green, 0.9 blue (common practice, no
/// source).
VeilPopulation make_mask() {
  return {TintKind::none,
          0.55,
          1.3,
          {{{0.22, 0.6, 1.0}, 0.3}, {{0.28, 0.67, 1.0}, 0.4}, {{0.35, 0.75, 1.0}, 0.3}},
          {{0.0, 1.0}}};
}

}  // namespace

const VeilPopulation& dye_population() {
  static const VeilPopulation population = make_dye();
  return population;
}

const VeilPopulation& haze_population() {
  static const VeilPopulation population = make_haze();
  return population;
}

const VeilPopulation& yellow_population() {
  static const VeilPopulation population = make_yellow();
  return population;
}

const VeilPopulation& mask_population() {
  static const VeilPopulation population = make_mask();
  return population;
}

/// Grain is the same in all channels and cancels; coating and washing leave clean film even in
/// colour within a thousandth or two.
const std::vector<Weighted>& clean_textures() {
  static const std::vector<Weighted> textures{{0.0004, 0.4}, {0.0009, 0.4}, {0.002, 0.2}};
  return textures;
}

/// Staining developers: slope of blue 1.15 to 1.6, of green 1.05 to 1.25 (common practice, no
/// source).
const std::vector<Weighted>& stain_green_shares() {
  static const std::vector<Weighted> shares{{0.1, 0.2}, {0.3, 0.4}, {0.5, 0.3}, {0.7, 0.1}};
  return shares;
}

}  // namespace fogline
