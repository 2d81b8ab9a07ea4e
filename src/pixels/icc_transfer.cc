#include "pixels/icc_transfer.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>
#include <utility>
#include <vector>

#include <lcms2.h>

namespace fogline {

namespace {

/// Nodes of a curve read from a profile: one a 16-bit code.
constexpr int curve_nodes = 65536;

/// Nodes of a curve followed through a table, whose own grid is far coarser.
constexpr int table_nodes = 1024;

/// Largest embedded profile looked at; real ones are below 2 MB.
constexpr std::size_t largest_profile_bytes = 16 << 20;

/// A tone curve must end above this share of full light to be believed.
constexpr float least_full_light = 0.5F;

/// Steps down that are still called rising (light): rounding of 16-bit tables.
constexpr float falling_tolerance = 1e-3F;

struct CloseProfile {
  void operator()(void* profile) const { cmsCloseProfile(profile); }
};
struct FreeContext {
  void operator()(cmsContext context) const { cmsDeleteContext(context); }
};
struct FreeTransform {
  void operator()(void* transform) const { cmsDeleteTransform(transform); }
};
using Profile = std::unique_ptr<void, CloseProfile>;
using Context = std::unique_ptr<std::remove_pointer_t<cmsContext>, FreeContext>;
using Transform = std::unique_ptr<void, FreeTransform>;

bool read_curve_tag(cmsHPROFILE profile, cmsTagSignature tag, std::vector<float>& nodes) {
  const auto* curve = static_cast<const cmsToneCurve*>(cmsReadTag(profile, tag));
  if (curve == nullptr) {
    return false;
  }
  nodes.resize(curve_nodes);
  for (int i = 0; i < curve_nodes; ++i) {
    const float code = static_cast<float>(i) / static_cast<float>(curve_nodes - 1);
    nodes[static_cast<std::size_t>(i)] = cmsEvalToneCurveFloat(curve, code);
  }
  return true;
}

bool read_curve_tags(cmsHPROFILE profile, int channels, SampledCurve& samples) {
  if (channels == 1) {
    return read_curve_tag(profile, cmsSigGrayTRCTag, samples[0]);
  }
  return read_curve_tag(profile, cmsSigRedTRCTag, samples[0]) &&
         read_curve_tag(profile, cmsSigGreenTRCTag, samples[1]) &&
         read_curve_tag(profile, cmsSigBlueTRCTag, samples[2]);
}

/// Luminance (Y, white = 1) along the grey axis of a profile that has only a table.
bool follow_table(cmsContext context, cmsHPROFILE profile, int channels, SampledCurve& samples) {
  const Profile xyz(cmsCreateXYZProfileTHR(context));
  const cmsUInt32Number from = channels == 1 ? TYPE_GRAY_DBL : TYPE_RGB_DBL;
  const Transform transform(cmsCreateTransformTHR(context, profile, from, xyz.get(), TYPE_XYZ_DBL,
                                                  INTENT_RELATIVE_COLORIMETRIC,
                                                  cmsFLAGS_NOOPTIMIZE));
  if (transform == nullptr) {
    return false;
  }
  samples[0].resize(table_nodes);
  for (int i = 0; i < table_nodes; ++i) {
    const double code = static_cast<double>(i) / (table_nodes - 1);
    const std::array<double, 3> grey{code, code, code};
    std::array<double, 3> light{};
    cmsDoTransform(transform.get(), grey.data(), light.data(), 1);
    samples[0][static_cast<std::size_t>(i)] = static_cast<float>(light[1]);
  }
  for (int c = 1; c < channels; ++c) {
    samples[static_cast<std::size_t>(c)] = samples[0];
  }
  return true;
}

/// True where light rises with the code, to near full light. Holds values in 0 to 1.
bool is_tone_curve(std::vector<float>& nodes) {
  float highest = 0.0F;
  for (float& node : nodes) {
    if (!std::isfinite(node)) {
      return false;
    }
    node = std::clamp(node, 0.0F, 1.0F);
    if (node < highest - falling_tolerance) {
      return false;
    }
    highest = std::max(highest, node);
  }
  return highest > least_full_light;
}

}  // namespace

IccTone icc_tone(const void* profile_bytes, std::size_t bytes, int channels) {
  IccTone tone;
  if (bytes > largest_profile_bytes) {
    tone.curve = Unknown::profile_too_large;
    return tone;
  }
  const Context context(cmsCreateContext(nullptr, nullptr));
  const Profile profile(
      cmsOpenProfileFromMemTHR(context.get(), profile_bytes, static_cast<cmsUInt32Number>(bytes)));
  if (profile == nullptr) {
    tone.curve = Unknown::profile_damaged;
    return tone;
  }
  const cmsColorSpaceSignature fitting = channels == 1 ? cmsSigGrayData : cmsSigRgbData;
  if (cmsGetColorSpace(profile.get()) != fitting) {
    tone.curve = Unknown::profile_of_other_kind;
    return tone;
  }
  SampledCurve samples;
  if (!read_curve_tags(profile.get(), channels, samples)) {
    tone.from_table = follow_table(context.get(), profile.get(), channels, samples);
    if (!tone.from_table) {
      tone.curve = Unknown::profile_without_curve;
      return tone;
    }
  }
  for (int c = 0; c < channels; ++c) {
    if (!is_tone_curve(samples[static_cast<std::size_t>(c)])) {
      tone.curve = Unknown::profile_not_rising;
      return tone;
    }
  }
  tone.curve = tone_curve_from_samples(std::move(samples), channels, TransferSource::icc_profile);
  return tone;
}

}  // namespace fogline
