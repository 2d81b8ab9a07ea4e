#include "simulator/foreign_sampling.h"

#include "simulator/device_sampling.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace filmsim {
namespace {

// A veil of any colour: no ratio of channels is more likely than another.
Rgb any_colour(double amount, Random& random) {
  Rgb colour{};
  for (double& channel : colour) channel = amount * random.uniform();
  return colour;
}

void add_foreign_veil(FilmStock& stock, Random& random) {
  const double amount = random.log_uniform(0.03, 0.3);
  switch (random.integer(0, 3)) {
    case 0:
      stock.dye_left = any_colour(amount, random);
      break;
    case 1:
      stock.yellow_stain = any_colour(amount, random);
      break;
    case 2:
      stock.haze = any_colour(amount, random);
      break;
    default:
      stock.image_stain = any_colour(0.6 * amount, random);
      break;
  }
}

CurveSettings foreign_curve(Random& random) {
  CurveSettings curve;
  constexpr std::array kFamilies = {CurveFamily::kTwoLayers, CurveFamily::kSweptToe,
                                    CurveFamily::kShortToe, CurveFamily::kWavyLine};
  curve.family = kFamilies[static_cast<std::size_t>(random.integer(0, 3))];
  curve.contrast_index = random.uniform(0.32, 1.0);
  curve.maximum_density =
      std::clamp(random.uniform(2.0, 4.0) * curve.contrast_index / 0.58, 1.6, 3.9);
  curve.speed_point_log_h = random.uniform(-2.9, -1.3);
  return curve;
}

FilmStock foreign_stock(FilmFormat format, Random& random) {
  constexpr double kTinted = 0.35;
  FilmStock stock = sample_stock(format, random);
  stock.dye_left = stock.yellow_stain = stock.haze = stock.image_stain = {};
  const double grey = random.uniform(0.04, 0.36);
  const Rgb colour = any_colour(random.chance(0.5) ? 0.02 : 0.12, random);
  for (std::size_t c = 0; c < colour.size(); ++c) stock.base[c] = grey + colour[c];
  stock.fog = random.chance(0.85) ? random.log_uniform(0.02, 0.15) : random.uniform(0.15, 0.5);
  stock.curve = foreign_curve(random);
  stock.granularity = random.log_uniform(3e-4, 1.5e-3);
  stock.grain_um = random.uniform(4.0, 16.0);
  stock.edge_print_log_h = random.uniform(0.8, 2.6);
  if (random.chance(kTinted)) add_foreign_veil(stock, random);
  return stock;
}

ForeignCallier foreign_callier(double greatest, Random& random) {
  ForeignCallier callier;
  callier.law = static_cast<CallierLaw>(random.integer(0, 2));
  const double excess = random.uniform(0.0, greatest);
  const double blue_more = random.uniform(-0.05, 0.25);  // short waves scatter more, mostly
  callier.excess = {excess * (1.0 - blue_more), excess, excess * (1.0 + blue_more)};
  callier.knee = random.log_uniform(0.1, 1.0);
  callier.fog_scatters = random.chance(0.6);
  return callier;
}

void add_hot_spots(LampFallOff& lamp, Random& random) {
  const int spots = random.chance(0.4) ? random.integer(1, 3) : 0;
  for (int i = 0; i < spots; ++i) {
    HotSpot spot;
    spot.middle = {random.uniform(-0.5, 0.5), random.uniform(-0.5, 0.5)};
    spot.width = random.uniform(0.05, 0.3);
    spot.gain = random.uniform(-0.2, 0.35);
    lamp.hot_spots.push_back(spot);
  }
}

}  // namespace

Roll sample_foreign_roll(FilmFormat format, Random& random) {
  Roll roll = sample_roll(format, random);
  roll.stock = foreign_stock(format, random);
  roll.log_range_mean = random.uniform(1.5, 2.9);
  roll.exposure_error_stops = random.normal(0.0, 1.2);
  roll.gap_sd_mm = random.uniform(0.02, 0.6);
  return roll;
}

ForeignLaws sample_scanner_laws(Random& random) {
  ForeignLaws laws;
  laws.callier = foreign_callier(random.chance(0.5) ? 0.25 : 0.6, random);
  laws.lamp.ratio = random.uniform(1.0, 1.25);
  laws.lamp.middle = {random.uniform(-0.5, 0.5), random.uniform(-0.5, 0.5)};
  laws.lamp.power = random.uniform(1.0, 4.0);
  laws.mask = {random.chance(0.7) ? random.uniform(0.02, 0.3) : 0.0, random.log_uniform(0.5, 4.0)};
  laws.halo.share = random.log_uniform(0.003, 0.06);
  laws.halo.radius_mm = random.log_uniform(0.3, 3.0);
  laws.halo.tail = random.uniform(0.3, 1.5);
  laws.surround_light = random.log_uniform(1e-4, 1e-2);
  return laws;
}

ForeignLaws sample_camera_laws(Random& random) {
  ForeignLaws laws;
  laws.callier = foreign_callier(random.chance(0.7) ? 0.08 : 0.4, random);
  laws.lamp.ratio = random.chance(0.5) ? random.uniform(1.0, 1.5) : random.uniform(1.5, 4.0);
  laws.lamp.middle = {random.normal(0.0, 0.2), random.normal(0.0, 0.2)};
  laws.lamp.power = random.uniform(1.2, 4.0);
  laws.lamp.aspect = random.log_uniform(0.5, 2.0);
  laws.lamp.vignetting = random.uniform(0.0, 0.4);
  for (double& drift : laws.lamp.colour_drift) drift = random.normal(0.0, 0.06);
  add_hot_spots(laws.lamp, random);
  laws.mask = {random.chance(0.5) ? random.uniform(0.02, 0.3) : 0.0, random.log_uniform(0.5, 4.0)};
  laws.halo.share = random.log_uniform(0.01, 0.2);
  laws.halo.radius_mm = random.log_uniform(0.5, 3.0);
  laws.halo.tail = random.uniform(0.3, 1.5);
  laws.surround_light = random.log_uniform(3e-4, 5e-2);
  return laws;
}

Rgb sample_lamp_colour(Random& random) {
  const auto weak = [&](double low, double high) { return random.uniform(low, high); };
  switch (random.integer(0, 6)) {
    case 0:
    case 1:  // white
      return {weak(0.75, 1.0), 1.0, weak(0.75, 1.0)};
    case 2:  // warm
      return {1.0, weak(0.6, 0.85), weak(0.25, 0.5)};
    case 3:  // yellow
      return {1.0, weak(0.6, 0.95), weak(0.01, 0.12)};
    case 4:  // blue
      return {weak(0.02, 0.3), weak(0.2, 0.6), 1.0};
    case 5:  // one narrow band, the other channels see what their filters leak
      return random.chance(0.5) ? Rgb{weak(0.02, 0.2), 1.0, weak(0.02, 0.2)}
                                : Rgb{1.0, weak(0.02, 0.25), weak(0.01, 0.05)};
    default:  // two narrow bands
      return {1.0, weak(0.05, 0.2), weak(0.4, 1.0)};
  }
}

FinishedPicture sample_finish(const Rgb& lamp, Random& random) {
  constexpr double kGreatestGain = 6.0;
  FinishedPicture picture;
  // Balanced not at all, half, or fully.
  const double share = random.chance(0.4) ? 0.0 : random.uniform(0.0, 1.0);
  for (std::size_t c = 0; c < lamp.size(); ++c) {
    picture.balance[c] = std::min(std::pow(lamp[c], -share), kGreatestGain);
  }
  picture.saturation = random.uniform(0.7, 1.3);
  if (random.chance(0.4)) picture.black_level = random.uniform(0.0, 0.08);
  if (random.chance(0.3)) picture.white_level = random.uniform(0.9, 1.0);
  if (random.chance(0.7)) picture.s_curve = random.uniform(0.0, 0.7);
  if (random.chance(0.5)) picture.roll_off = random.uniform(0.0, 1.2);
  if (random.chance(0.4)) picture.toe_lift = random.uniform(0.0, 0.08);
  if (random.chance(0.4)) picture.local_contrast = random.uniform(0.0, 0.35);
  picture.local_radius_mm = random.log_uniform(0.5, 5.0);
  if (random.chance(0.5)) picture.noise_reduction = random.uniform(0.2, 1.0);
  if (random.chance(0.7)) picture.sharpening = random.uniform(0.1, 1.2);
  picture.sharpening_radius_px = random.uniform(0.7, 2.5);
  return picture;
}

namespace {

void sample_lying_tag(EncodingSettings& encoding, double right, Random& random) {
  constexpr std::array kLies = {72.0, 96.0, 300.0};
  const double pick = random.uniform();
  encoding.resolution_tag = pick < right         ? ResolutionTag::kRight
                            : random.chance(0.5) ? ResolutionTag::kAbsent
                                                 : ResolutionTag::kWrong;
  encoding.wrong_pixels_per_inch = kLies[static_cast<std::size_t>(random.integer(0, 2))];
}

void make_jpeg(EncodingSettings& encoding, Random& random) {
  encoding.file = FileKind::kJpeg;
  encoding.bits = 8;
  encoding.jpeg_quality = random.integer(40, 95);
  encoding.chroma = static_cast<ChromaSampling>(random.integer(0, 2));
}

}  // namespace

EncodingSettings sample_camera_encoding(Random& random) {
  EncodingSettings encoding;
  encoding.transfer = Transfer::kSrgb;
  encoding.bits = 8;
  encoding.tone_told = random.chance(0.6) ? ToneTold::kUntold : ToneTold::kIccProfile;
  const double pick = random.uniform();
  if (pick < 0.6) {
    make_jpeg(encoding, random);
  } else {
    encoding.file = pick < 0.8 ? FileKind::kPng : FileKind::kTiff;
    if (random.chance(0.25)) {
      encoding.bits = 16;
      encoding.tone_told = ToneTold::kIccProfile;
    }
  }
  if (random.chance(0.12)) encoding.channels = 1;
  sample_lying_tag(encoding, 0.0, random);
  return encoding;
}

EncodingSettings sample_foreign_encoding(Random& random) {
  EncodingSettings encoding = sample_encoding(random);
  if (random.chance(0.4)) {
    encoding.bits = 8;
    encoding.transfer = Transfer::kSrgb;
    encoding.tone_told = random.chance(0.6) ? ToneTold::kUntold : ToneTold::kIccProfile;
    if (random.chance(0.5)) make_jpeg(encoding, random);
  }
  sample_lying_tag(encoding, 0.4, random);
  return encoding;
}

}  // namespace filmsim
