#include "simulator/icc_profile.h"

#include <array>
#include <stdexcept>

#include <lcms2.h>

namespace filmsim {
namespace {

cmsToneCurve* tone_curve(const EncodingSettings& settings) {
  constexpr cmsInt32Number kSrgbType = 4;  // gamma, a, b, c, d in the sense of ICC parametric 3
  switch (settings.transfer) {
    case Transfer::kLinear:
      return cmsBuildGamma(nullptr, 1.0);
    case Transfer::kPower:
      return cmsBuildGamma(nullptr, settings.exponent);
    case Transfer::kSrgb: {
      const std::array<cmsFloat64Number, 5> parameters = {2.4, 1.0 / 1.055, 0.055 / 1.055,
                                                          1.0 / 12.92, 0.04045};
      return cmsBuildParametricToneCurve(nullptr, kSrgbType, parameters.data());
    }
  }
  return nullptr;
}

}  // namespace

std::string icc_profile(const EncodingSettings& settings) {
  cmsToneCurve* curve = tone_curve(settings);
  const cmsCIExyY white = {0.3127, 0.3290, 1.0};
  const cmsCIExyYTRIPLE primaries = {{0.64, 0.33, 1.0}, {0.30, 0.60, 1.0}, {0.15, 0.06, 1.0}};
  std::array<cmsToneCurve*, 3> curves = {curve, curve, curve};
  cmsHPROFILE profile = settings.channels == 1
                            ? cmsCreateGrayProfile(&white, curve)
                            : cmsCreateRGBProfile(&white, &primaries, curves.data());
  cmsUInt32Number size = 0;
  std::string bytes;
  if (cmsSaveProfileToMem(profile, nullptr, &size) != 0) {
    bytes.resize(size);
    cmsSaveProfileToMem(profile, bytes.data(), &size);
  }
  cmsCloseProfile(profile);
  cmsFreeToneCurve(curve);
  // The profile's date would make each file differ: a fixed one, the first of January 2000.
  constexpr std::size_t kDateAt = 24;
  const std::string date("\x07\xD0\0\1\0\1\0\0\0\0\0\0", 12);
  if (bytes.size() > kDateAt + date.size()) bytes.replace(kDateAt, date.size(), date);
  if (bytes.empty()) throw std::runtime_error("colour profile could not be made");
  return bytes;
}

}  // namespace filmsim
