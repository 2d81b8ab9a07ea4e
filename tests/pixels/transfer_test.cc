// How codes become light: published tables, and Little CMS's own evaluation of the same profiles.

#include "base/refusal_of.h"
#include "pixels/exact_light.h"
#include "pixels/test_files.h"

#include <fogline/pixels/open_scan.h>

#include <array>
#include <cmath>
#include <memory>

#include <gtest/gtest.h>
#include <lcms2.h>

namespace fogline {
namespace {

using test::TempFolder;
using test::TiffSpec;

constexpr double power_563_256 = 563.0 / 256.0;

OpenOptions option(TransferKind kind, std::optional<double> exponent = std::nullopt) {
  return OpenOptions{Transfer{kind, exponent, TransferSource::option}};
}

bool has_caution(const ScanInfo& info, CautionKind kind) {
  return std::any_of(info.cautions.begin(), info.cautions.end(),
                     [&](const Caution& caution) { return caution.fact.kind == kind; });
}

/// A grey ramp: column x holds code x (8 bits) or 257 x (16 bits).
TiffSpec ramp(int bits, int colours = 1) {
  TiffSpec spec;
  spec.width = 256;
  spec.height = 1;
  spec.bits = bits;
  spec.colours = colours;
  spec.code = [](int x, int, int) { return static_cast<std::uint16_t>(x * 257); };
  return spec;
}

Raster<float> read_ramp(const std::string& path, const OpenOptions& options = {}) {
  return test::exact_light(path, options, RegionPx{0, 0, 256, 1});
}

std::vector<std::uint8_t> bytes_of_profile(cmsHPROFILE profile) {
  cmsUInt32Number count = 0;
  cmsSaveProfileToMem(profile, nullptr, &count);
  std::vector<std::uint8_t> bytes(count);
  cmsSaveProfileToMem(profile, bytes.data(), &count);
  return bytes;
}

TiffSpec with_profile(TiffSpec spec, const std::vector<std::uint8_t>& profile) {
  spec.more_tags = [profile](TIFF* tiff) {
    TIFFSetField(tiff, TIFFTAG_ICCPROFILE, static_cast<std::uint32_t>(profile.size()),
                 profile.data());
  };
  return spec;
}

/// A matrix profile of three curves (or a grey one of one).
std::vector<std::uint8_t> profile_of(const std::vector<cmsToneCurve*>& curves) {
  const cmsCIExyY white{0.3127, 0.3290, 1.0};
  const cmsCIExyYTRIPLE primaries{{0.64, 0.33, 1.0}, {0.30, 0.60, 1.0}, {0.15, 0.06, 1.0}};
  cmsToneCurve* three[3] = {curves[0], curves.back(), curves.back()};
  if (curves.size() == 3) {
    three[1] = curves[1];
  }
  const cmsHPROFILE profile = curves.size() == 1 ? cmsCreateGrayProfile(&white, curves[0])
                                                 : cmsCreateRGBProfile(&white, &primaries, three);
  auto bytes = bytes_of_profile(profile);
  cmsCloseProfile(profile);
  return bytes;
}

struct CodeDensity {
  int code;
  double density;
};

/// 8-bit code to density, computed from the formulas of the standards.
/// sRGB: IEC 61966-2-1, decode v <= 0.04045: v / 12.92, else ((v + 0.055) / 1.055)^2.4.
constexpr std::array<CodeDensity, 12> srgb_codes{{{254, .0039},
                                                  {240, .0598},
                                                  {200, .2384},
                                                  {188, .2985},
                                                  {128, .6658},
                                                  {64, 1.2901},
                                                  {32, 1.8403},
                                                  {16, 2.2855},
                                                  {11, 2.4754},
                                                  {10, 2.5178},
                                                  {5, 2.8188},
                                                  {1, 3.5178}}};
/// A power of 563/256 = 2.19921875.
constexpr std::array<CodeDensity, 10> power_codes{{{254, .0038},
                                                   {240, .0579},
                                                   {200, .2320},
                                                   {188, .2911},
                                                   {128, .6583},
                                                   {64, 1.3203},
                                                   {32, 1.9824},
                                                   {16, 2.6444},
                                                   {5, 3.7553},
                                                   {1, 5.2925}}};

TEST(Transfer, EightBitCodesGiveThePublishedDensities) {
  const TempFolder folder;
  const std::string path = folder.file("ramp.tif");
  test::write_tiff(path, ramp(8));
  const auto srgb = read_ramp(path, option(TransferKind::srgb));
  for (const auto& [code, density] : srgb_codes) {
    EXPECT_NEAR(density_from_transmittance(srgb.at(code, 0)), density, 2e-4) << code;
  }
  const auto power = read_ramp(path, option(TransferKind::power, power_563_256));
  for (const auto& [code, density] : power_codes) {
    EXPECT_NEAR(density_from_transmittance(power.at(code, 0)), density, 2e-4) << code;
  }
}

struct DensityCodes {
  double density;
  int srgb;
  int power;
  /// ISO 22028-2: encode L < 1/512: 16 L, else L^(1/1.8).
  int wide;
  int linear;
};

/// Density to 16-bit code, from the same formulas.
constexpr std::array<DensityCodes, 8> density_codes{{{0.1, 59210, 59020, 57666, 52056},
                                                     {0.3, 48243, 47870, 44648, 32845},
                                                     {0.6, 35276, 34966, 30419, 16462},
                                                     {1.0, 22884, 23002, 18236, 6554},
                                                     {1.5, 12791, 13627, 9619, 2072},
                                                     {2.0, 6544, 8073, 5074, 655},
                                                     {2.5, 2677, 4783, 2677, 207},
                                                     {3.0, 847, 2834, 1049, 66}}};

/// The code whose neighbours' light encloses 10^-density must be the published one: the light one
/// code below lies under, the light one code above over it.
void expect_code(const std::string& path, const OpenOptions& options, int code, double density) {
  TiffSpec spec;
  spec.width = 3;
  spec.height = 1;
  spec.colours = 1;
  spec.code = [code](int x, int, int) { return static_cast<std::uint16_t>(code - 1 + x); };
  test::write_tiff(path, spec);
  const auto light = test::exact_light(path, options, RegionPx{0, 0, 3, 1});
  EXPECT_LT(light.at(0, 0), transmittance_from_density(density)) << code;
  EXPECT_GT(light.at(2, 0), transmittance_from_density(density)) << code;
}

TEST(Transfer, DensitiesStandAtThePublishedSixteenBitCodes) {
  const TempFolder folder;
  const std::string path = folder.file("codes.tif");
  for (const auto& row : density_codes) {
    expect_code(path, option(TransferKind::srgb), row.srgb, row.density);
    expect_code(path, option(TransferKind::power, power_563_256), row.power, row.density);
    expect_code(path, option(TransferKind::linear), row.linear, row.density);
  }
}

/// The wide encoding has a linear foot: it comes in as a profile curve and stays one.
TEST(Transfer, WideEncodingByProfile) {
  const TempFolder folder;
  const std::string path = folder.file("codes.tif");
  // Type 3: Y = (aX + b)^g for X >= d, else cX.
  const double parameters[5] = {1.8, 1.0, 0.0, 1.0 / 16.0, 1.0 / 32.0};
  cmsToneCurve* curve = cmsBuildParametricToneCurve(nullptr, 4, parameters);
  const auto profile = profile_of({curve});
  cmsFreeToneCurve(curve);
  for (const auto& row : density_codes) {
    TiffSpec spec;
    spec.width = 3;
    spec.height = 1;
    spec.colours = 1;
    spec.code = [&](int x, int, int) { return static_cast<std::uint16_t>(row.wide - 1 + x); };
    test::write_tiff(path, with_profile(spec, profile));
    const auto scan = open_scan(path, {});
    ASSERT_EQ(scan->info().transfer.kind, TransferKind::curve);
    ASSERT_EQ(scan->info().transfer.source, TransferSource::icc_profile);
    const auto light = test::exact_light(path, {}, RegionPx{0, 0, 3, 1});
    EXPECT_LT(light.at(0, 0), transmittance_from_density(row.density));
    EXPECT_GT(light.at(2, 0), transmittance_from_density(row.density));
  }
}

TEST(Transfer, ProfilesAreNamedByTheirCurve) {
  const TempFolder folder;
  const std::string path = folder.file("ramp.tif");
  const cmsHPROFILE profile = cmsCreate_sRGBProfile();
  const auto srgb = bytes_of_profile(profile);
  cmsCloseProfile(profile);
  test::write_tiff(path, with_profile(ramp(16, 3), srgb));
  const auto known = open_scan(path, {});
  EXPECT_EQ(known->info().transfer.kind, TransferKind::srgb);
  EXPECT_EQ(known->info().transfer.source, TransferSource::icc_profile);
  EXPECT_TRUE(known->info().transfer_known);
  for (const double gamma : {1.0, 1.8, 2.2, power_563_256}) {
    cmsToneCurve* curve = cmsBuildGamma(nullptr, gamma);
    test::write_tiff(path, with_profile(ramp(16, 3), profile_of({curve, curve, curve})));
    cmsFreeToneCurve(curve);
    const auto scan = open_scan(path, {});
    const Transfer& transfer = scan->info().transfer;
    EXPECT_EQ(transfer.source, TransferSource::icc_profile);
    if (gamma == 1.0) {
      EXPECT_EQ(transfer.kind, TransferKind::linear);
    } else {
      ASSERT_EQ(transfer.kind, TransferKind::power) << gamma;
      // A profile keeps a power in 16 bits with 8 after the point.
      EXPECT_NEAR(transfer.exponent.value_or(0.0), gamma, 1.0 / 512.0);
    }
  }
}

TEST(Transfer, ProfileCurvesEqualLittleCmsOwnEvaluation) {
  const TempFolder folder;
  const std::string path = folder.file("ramp.tif");
  std::array<std::vector<cmsUInt16Number>, 3> tables;
  std::vector<cmsToneCurve*> curves;
  for (int c = 0; c < 3; ++c) {
    auto& table = tables[static_cast<std::size_t>(c)];
    for (int i = 0; i < 33; ++i) {
      const double x = i / 32.0;
      const double y = (0.6 * x + 0.4 * std::pow(x, 2.0 + c)) * 65535.0;
      table.push_back(static_cast<cmsUInt16Number>(std::lround(y)));
    }
    curves.push_back(cmsBuildTabulatedToneCurve16(nullptr, 33, table.data()));
  }
  test::write_tiff(path, with_profile(ramp(16, 3), profile_of(curves)));
  const auto scan = open_scan(path, {});
  EXPECT_EQ(scan->info().transfer.kind, TransferKind::curve);
  const auto light = read_ramp(path);
  for (int x = 0; x < 256; ++x) {
    for (int c = 0; c < 3; ++c) {
      const float code = static_cast<float>(x * 257) / 65535.0F;
      EXPECT_NEAR(light.at(x, 0, c),
                  cmsEvalToneCurveFloat(curves[static_cast<std::size_t>(c)], code), 1e-6);
    }
  }
  for (cmsToneCurve* curve : curves) {
    cmsFreeToneCurve(curve);
  }
}

TEST(Transfer, UnfitProfilesAreSaidAndNotUsed) {
  const TempFolder folder;
  const std::string path = folder.file("ramp.tif");
  cmsToneCurve* curve = cmsBuildGamma(nullptr, 2.2);
  const auto grey = profile_of({curve});
  cmsFreeToneCurve(curve);
  test::write_tiff(path, with_profile(ramp(8, 3), grey));
  EXPECT_TRUE(has_caution(open_scan(path, {})->info(), CautionKind::profile_unfit));
  test::write_tiff(path, with_profile(ramp(8, 3), std::vector<std::uint8_t>(300, 7)));
  const auto scan = open_scan(path, {});
  EXPECT_TRUE(has_caution(scan->info(), CautionKind::profile_unfit));
  EXPECT_TRUE(has_caution(scan->info(), CautionKind::transfer_assumed));
  const cmsUInt16Number down[2] = {65535, 0};
  cmsToneCurve* falling = cmsBuildTabulatedToneCurve16(nullptr, 2, down);
  test::write_tiff(path, with_profile(ramp(8, 1), profile_of({falling})));
  cmsFreeToneCurve(falling);
  EXPECT_TRUE(has_caution(open_scan(path, {})->info(), CautionKind::profile_unfit));
}

TEST(Transfer, TableProfilesAreFollowedAlongGrey) {
  const TempFolder folder;
  const std::string path = folder.file("ramp.tif");
  // A link from RGB to Lab holds only a table.
  const cmsHPROFILE srgb = cmsCreate_sRGBProfile();
  const cmsHPROFILE lab = cmsCreateLab4Profile(nullptr);
  const cmsHTRANSFORM transform =
      cmsCreateTransform(srgb, TYPE_RGB_16, lab, TYPE_Lab_16, INTENT_RELATIVE_COLORIMETRIC, 0);
  const cmsHPROFILE link = cmsTransform2DeviceLink(transform, 4.3, cmsFLAGS_FORCE_CLUT);
  cmsSetDeviceClass(link, cmsSigInputClass);
  const auto bytes = bytes_of_profile(link);
  cmsCloseProfile(link);
  cmsDeleteTransform(transform);
  cmsCloseProfile(lab);
  cmsCloseProfile(srgb);
  test::write_tiff(path, with_profile(ramp(8, 3), bytes));
  const auto scan = open_scan(path, {});
  ASSERT_TRUE(has_caution(scan->info(), CautionKind::profile_table));
  const auto light = read_ramp(path);
  const auto formula = read_ramp(path, option(TransferKind::srgb));
  for (int x = 0; x < 256; ++x) {
    // A table of some dozens of nodes in L*: near, not equal.
    EXPECT_NEAR(light.at(x, 0, 1), formula.at(x, 0, 1), 0.005) << x;
  }
}

std::vector<std::uint16_t> power_table(int bits, double exponent) {
  const int codes = 1 << bits;
  std::vector<std::uint16_t> table;
  for (int code = 0; code < codes; ++code) {
    const double share = static_cast<double>(code) / (codes - 1);
    table.push_back(static_cast<std::uint16_t>(std::lround(std::pow(share, exponent) * 65535.0)));
  }
  return table;
}

TEST(Transfer, TransferFunctionTag) {
  const TempFolder folder;
  const std::string path = folder.file("ramp.tif");
  for (const int bits : {8, 16}) {
    for (const int colours : {1, 3}) {
      TiffSpec spec = ramp(bits, colours);
      auto table = power_table(bits, 1.7);
      table[table.size() / 3] = static_cast<std::uint16_t>(table[table.size() / 3] + 40);
      spec.more_tags = [&](TIFF* tiff) {
        TIFFSetField(tiff, TIFFTAG_TRANSFERFUNCTION, table.data(), table.data(), table.data());
      };
      test::write_tiff(path, spec);
      const auto scan = open_scan(path, {});
      EXPECT_EQ(scan->info().transfer.source, TransferSource::file_tag);
      EXPECT_EQ(scan->info().transfer.kind, TransferKind::curve);
      EXPECT_TRUE(scan->info().transfer_known);
      const auto light = read_ramp(path);
      for (int x = 0; x < 256; ++x) {
        const auto code = static_cast<std::size_t>(bits == 8 ? x : x * 257);
        EXPECT_NEAR(light.at(x, 0, colours - 1), table[code] / 65535.0, 1e-6);
      }
    }
  }
}

TEST(Transfer, ProfileGoesOverTagAndOptionOverAll) {
  const TempFolder folder;
  const std::string path = folder.file("ramp.tif");
  TiffSpec spec = ramp(8, 1);
  cmsToneCurve* curve = cmsBuildGamma(nullptr, 2.5);
  const auto profile = profile_of({curve});
  cmsFreeToneCurve(curve);
  const auto table = power_table(8, 1.5);
  spec.more_tags = [&](TIFF* tiff) {
    TIFFSetField(tiff, TIFFTAG_TRANSFERFUNCTION, table.data());
    TIFFSetField(tiff, TIFFTAG_ICCPROFILE, static_cast<std::uint32_t>(profile.size()),
                 profile.data());
  };
  test::write_tiff(path, spec);
  EXPECT_NEAR(open_scan(path, {})->info().transfer.exponent.value_or(0.0), 2.5, 0.002);
  const auto named = open_scan(path, option(TransferKind::power, 3.0));
  EXPECT_EQ(named->info().transfer.source, TransferSource::option);
  EXPECT_NEAR(read_ramp(path, option(TransferKind::power, 3.0)).at(128, 0),
              std::pow(128.0 / 255.0, 3.0), 1e-6);
}

TEST(Transfer, WhatIsAssumedWithoutAnyWord) {
  const TempFolder folder;
  const std::string path = folder.file("ramp.tif");
  test::write_tiff(path, ramp(8));
  auto scan = open_scan(path, {});
  EXPECT_EQ(scan->info().transfer.kind, TransferKind::srgb);
  EXPECT_EQ(scan->info().transfer.source, TransferSource::assumed);
  EXPECT_TRUE(scan->info().transfer_known);
  EXPECT_TRUE(has_caution(scan->info(), CautionKind::transfer_assumed));
  for (const int bits : {16, 32}) {
    test::write_tiff(path, ramp(bits));
    scan = open_scan(path, {});
    EXPECT_EQ(scan->info().transfer.kind, TransferKind::linear);
    EXPECT_EQ(scan->info().transfer.source, TransferSource::assumed);
    EXPECT_FALSE(scan->info().transfer_known);
    scan->set_transfer(Transfer{TransferKind::power, 2.0, TransferSource::assumed});
    EXPECT_TRUE(scan->info().transfer_known);
    EXPECT_EQ(scan->info().transfer.kind, TransferKind::power);
    const ScanGrid grid = scan->survey({256}, {});
    // A step of the stored root is 1/65535.
    EXPECT_NEAR(std::sqrt(grid.light.light(100, 0, 0)), 100.0 / 255.0, 1.1e-5);
    EXPECT_EQ(test::kind_of_refusal([&] {
                scan->set_transfer(Transfer{TransferKind::curve, {}, {}});
              }),
              Refusal::no_own_tone_curve);
    EXPECT_THROW(scan->set_transfer(Transfer{TransferKind::power, {}, {}}), std::invalid_argument);
  }
  TiffSpec spec = ramp(32);
  spec.sample_format = SAMPLEFORMAT_IEEEFP;
  test::write_tiff(path, spec);
  scan = open_scan(path, {});
  EXPECT_EQ(scan->info().transfer.kind, TransferKind::linear);
  EXPECT_EQ(scan->info().transfer.source, TransferSource::file_tag);
  EXPECT_TRUE(scan->info().transfer_known);
}

TEST(Transfer, AnOptionTakesBackTheAssumption) {
  const TempFolder folder;
  const std::string path = folder.file("ramp.tif");
  test::write_tiff(path, ramp(8));
  EXPECT_FALSE(has_caution(open_scan(path, option(TransferKind::srgb))->info(),
                           CautionKind::transfer_assumed));
}

TEST(Transfer, FloatWithAStatedMaximum) {
  const TempFolder folder;
  const std::string path = folder.file("ramp.tif");
  TiffSpec spec = ramp(32);
  spec.sample_format = SAMPLEFORMAT_IEEEFP;
  spec.more_tags = [](TIFF* tiff) { TIFFSetField(tiff, TIFFTAG_SMAXSAMPLEVALUE, 2.0); };
  test::write_tiff(path, spec);
  EXPECT_NEAR(read_ramp(path).at(255, 0), 0.5, 1e-6);
}

/// libtiff drops GrayResponseCurve when it writes, so the file is built byte by byte.
std::vector<char> grey_response_file() {
  std::vector<char> bytes;
  const auto put = [&](unsigned value, int size) {
    for (int i = 0; i < size; ++i) {
      bytes.push_back(static_cast<char>((value >> (8 * i)) & 0xFFU));
    }
  };
  bytes.insert(bytes.end(), {'I', 'I'});
  put(42, 2);
  put(8, 4);
  struct Entry {
    unsigned tag, type, count, value;
  };
  constexpr unsigned entries = 10;
  constexpr unsigned curve_at = 8 + 2 + entries * 12 + 4;
  constexpr unsigned pixels_at = curve_at + 512;
  put(entries, 2);
  for (const Entry& entry :
       {Entry{256, 4, 1, 256}, Entry{257, 4, 1, 1}, Entry{258, 3, 1, 8}, Entry{259, 3, 1, 1},
        Entry{262, 3, 1, 1}, Entry{273, 4, 1, pixels_at}, Entry{278, 4, 1, 1},
        Entry{279, 4, 1, 256}, Entry{290, 3, 1, 3}, Entry{291, 3, 256, curve_at}}) {
    put(entry.tag, 2);
    put(entry.type, 2);
    put(entry.count, 4);
    put(entry.value, 4);
  }
  put(0, 4);
  for (unsigned code = 0; code < 256; ++code) {
    put((255 - code) * 10, 2);
  }
  for (unsigned code = 0; code < 256; ++code) {
    put(code, 1);
  }
  return bytes;
}

TEST(Transfer, GreyResponseCurveIsDensityByCode) {
  const TempFolder folder;
  const std::string path = folder.file("ramp.tif");
  test::write_bytes(path, grey_response_file());
  const auto scan = open_scan(path, {});
  EXPECT_TRUE(has_caution(scan->info(), CautionKind::grey_response_curve));
  EXPECT_EQ(scan->info().transfer.source, TransferSource::file_tag);
  const auto light = read_ramp(path);
  for (const int code : {255, 200, 100, 5}) {
    EXPECT_NEAR(density_from_transmittance(light.at(code, 0)), (255 - code) * 0.010, 1e-4);
  }
}

TEST(Transfer, LinearRawLevels) {
  const TempFolder folder;
  const std::string path = folder.file("raw.tif");
  constexpr int linear_raw = 34892;
  TiffSpec spec;
  spec.width = 4;
  spec.height = 1;
  spec.photometric = linear_raw;
  spec.code = [](int x, int, int) {
    constexpr std::array<std::uint16_t, 4> codes{100, 1000, 2050, 4000};
    return codes[static_cast<std::size_t>(x)];
  };
  spec.more_tags = [](TIFF* tiff) {
    const std::uint32_t white[3] = {4000, 4000, 4000};
    const float black[1] = {100.0F};
    TIFFSetField(tiff, TIFFTAG_WHITELEVEL, 3, white);
    TIFFSetField(tiff, TIFFTAG_BLACKLEVEL, 1, black);
  };
  test::write_tiff(path, spec);
  const auto scan = open_scan(path, {});
  EXPECT_TRUE(scan->info().transfer_known);
  EXPECT_EQ(scan->info().channels, 3);
  const auto light = test::exact_light(path, {}, RegionPx{0, 0, 4, 1});
  EXPECT_FLOAT_EQ(light.at(0, 0, 0), 0.0F);
  EXPECT_NEAR(light.at(2, 0, 1), 0.5, 1e-6);
  EXPECT_NEAR(light.at(3, 0, 2), 1.0, 1e-6);
  EXPECT_EQ(scan->survey({100}, {}).clipped.at(3, 0), 0x77);
}

}  // namespace
}  // namespace fogline
