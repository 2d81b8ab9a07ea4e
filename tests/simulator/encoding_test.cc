#include "simulator/encoding.h"

#include <array>
#include <cmath>

#include <gtest/gtest.h>

namespace filmsim {
namespace {

EncodingSettings with(Transfer transfer, double exponent = 2.2) {
  EncodingSettings settings;
  settings.transfer = transfer;
  settings.exponent = exponent;
  return settings;
}

constexpr double kDisplayExponent = 563.0 / 256.0;

// Densities of 8-bit codes, worked out from IEC 61966-2-1 and from the exponent 563/256.
TEST(Transfer, EightBitCodesHaveTheirDensity) {
  struct Row {
    int code;
    double srgb;
    double power22;
  };
  constexpr std::array<Row, 8> kRows = {{{254, .0039, .0038},
                                         {240, .0598, .0579},
                                         {200, .2384, .2320},
                                         {188, .2985, .2911},
                                         {128, .6658, .6583},
                                         {64, 1.2901, 1.3203},
                                         {32, 1.8403, 1.9824},
                                         {16, 2.2855, 2.6444}}};
  for (const Row& row : kRows) {
    const double level = row.code / 255.0;
    EXPECT_NEAR(-std::log10(light_from_encoded(level, with(Transfer::kSrgb))), row.srgb, 2e-4);
    EXPECT_NEAR(-std::log10(light_from_encoded(level, with(Transfer::kPower, kDisplayExponent))),
                row.power22, 2e-4);
  }
}

TEST(Transfer, DensitiesHaveTheirSixteenBitCode) {
  struct Row {
    double density;
    int srgb, power22, power18, linear;
  };
  // The column of exponent 1.8 holds above the linear foot of ISO 22028-2 (density below 2.7).
  constexpr std::array<Row, 6> kRows = {{{0.1, 59210, 59020, 57666, 52056},
                                         {0.3, 48243, 47870, 44648, 32845},
                                         {1.0, 22884, 23002, 18236, 6554},
                                         {1.5, 12791, 13627, 9619, 2072},
                                         {2.0, 6544, 8073, 5074, 655},
                                         {2.5, 2677, 4783, 2677, 207}}};
  for (const Row& row : kRows) {
    const double light = std::pow(10.0, -row.density);
    const auto code = [&](const EncodingSettings& s) {
      return 65535.0 * encoded_from_light(light, s);
    };
    EXPECT_NEAR(code(with(Transfer::kSrgb)), row.srgb, 1.0);
    EXPECT_NEAR(code(with(Transfer::kPower, kDisplayExponent)), row.power22, 1.0);
    EXPECT_NEAR(code(with(Transfer::kPower, 1.8)), row.power18, 1.0);
    EXPECT_NEAR(code(with(Transfer::kLinear)), row.linear, 1.0);
  }
}

// The quick table inside encode() against the formula, at every density of interest.
TEST(Encode, CodesAreThoseOfTheFormula) {
  Plane ramp(400, 1);
  for (int x = 0; x < 400; ++x) ramp.at(x, 0) = static_cast<float>(std::pow(10.0, -0.01 * x));
  for (const EncodingSettings& base :
       {with(Transfer::kLinear), with(Transfer::kSrgb), with(Transfer::kPower, 1.8)}) {
    EncodingSettings settings = base;
    settings.channels = 3;
    const Picture picture = encode({ramp, ramp, ramp}, settings, 0.0);
    for (int x = 0; x < 400; ++x) {
      const double wanted = 65535.0 * encoded_from_light(ramp.at(x, 0), settings);
      // Within a code or 2e-4 of it: where codes are fine, no density is off by more than 0.0002.
      EXPECT_NEAR(picture.code(x, 0, 1), wanted, std::max(1.0, 2e-4 * wanted));
    }
  }
}

TEST(Encode, ClipsStretchesInvertsAndMixes) {
  const Plane bright(2, 2, 1.4F);
  const Plane dark(2, 2, 0.25F);
  EncodingSettings settings = with(Transfer::kLinear);
  EXPECT_EQ(encode({bright, bright, bright}, settings, 0.0).code(0, 0, 0), 65535);
  settings.inverted = true;
  EXPECT_NEAR(encode({dark, dark, dark}, settings, 0.0).code(1, 1, 2), 0.75 * 65535, 1.0);
  settings.inverted = false;
  settings.stretch_low = 0.2;
  settings.stretch_high = 0.7;
  EXPECT_NEAR(encode({dark, dark, dark}, settings, 0.0).code(1, 1, 2), 0.1 * 65535, 1.0);
  settings = with(Transfer::kLinear);
  settings.channels = 1;
  settings.bits = 8;
  const Picture grey = encode({dark, bright, dark}, settings, 0.0);
  EXPECT_EQ(grey.channels, 1);
  EXPECT_EQ(grey.code(0, 0, 0), 255);  // 0.7152 * 1.4 and more is beyond white
}

}  // namespace
}  // namespace filmsim
