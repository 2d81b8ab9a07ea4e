#include "simulator/device_sampling.h"

namespace filmsim {
namespace {

void sample_lamp(ScannerSettings& scanner, double tilt_sd, Random& random) {
  const double tilt_x = random.normal(0.0, tilt_sd);
  const double tilt_y = random.normal(0.0, tilt_sd);
  for (std::size_t c = 0; c < scanner.lamp.size(); ++c) {
    scanner.tilt_x[c] = tilt_x + random.normal(0.0, 0.15 * tilt_sd);
    scanner.tilt_y[c] = tilt_y + random.normal(0.0, 0.15 * tilt_sd);
  }
}

void sample_lamp_colour(ScannerSettings& scanner, double weakest, Random& random) {
  for (double& channel : scanner.lamp) channel = random.uniform(weakest, 1.0);
  scanner.lamp[static_cast<std::size_t>(random.integer(0, 2))] = 1.0;
}

}  // namespace

ScannerSettings sample_scanner(Device device, Random& random) {
  ScannerSettings scanner;
  scanner.bare_level = random.uniform(0.60, 0.95);
  scanner.black_offset = random.chance(0.5) ? 0.0 : random.uniform(0.0, 0.003);
  scanner.glare.narrow_sd_mm = random.uniform(1.0, 4.0);
  scanner.glare.wide_sd_mm = random.uniform(10.0, 40.0);
  scanner.glare.narrow_part = random.uniform(0.2, 0.7);
  switch (device) {
    case Device::kFlatbed:
      scanner.callier = random.uniform(1.0, 1.2);
      scanner.glare.share = random.uniform(0.003, 0.02);
      scanner.glare.aspect = random.uniform(1.0, 4.0);
      scanner.glare.sensor_line_along_x = random.chance(0.7);
      scanner.blur_um = random.uniform(15.0, 40.0);
      scanner.full_well = random.uniform(15000.0, 60000.0);
      scanner.read_noise = random.uniform(5.0, 20.0);
      sample_lamp(scanner, 0.008, random);
      sample_lamp_colour(scanner, 0.9, random);
      break;
    case Device::kCamera:
      scanner.callier = random.uniform(1.0, 1.05);
      scanner.glare.share = random.uniform(0.003, 0.03);
      scanner.blur_um = random.uniform(10.0, 25.0);
      scanner.full_well = random.uniform(30000.0, 90000.0);
      scanner.read_noise = random.uniform(2.0, 6.0);
      scanner.bulge = random.uniform(0.0, 0.08);
      sample_lamp(scanner, 0.015, random);
      sample_lamp_colour(scanner, 0.75, random);
      break;
    case Device::kFilmScanner:
      scanner.callier = random.uniform(1.2, 1.4);
      scanner.glare.share = random.uniform(0.001, 0.008);
      scanner.blur_um = random.uniform(10.0, 18.0);
      scanner.full_well = random.uniform(30000.0, 90000.0);
      sample_lamp(scanner, 0.004, random);
      sample_lamp_colour(scanner, 0.9, random);
      break;
  }
  if (random.chance(0.2)) scanner.sharpening = random.uniform(0.1, 0.5);
  return scanner;
}

EncodingSettings sample_encoding(Random& random) {
  EncodingSettings encoding;
  const double pick = random.uniform();
  if (pick < 0.35) {
    encoding.transfer = Transfer::kLinear;
  } else if (pick < 0.65) {
    encoding.transfer = Transfer::kSrgb;
  } else {
    encoding.transfer = Transfer::kPower;
    encoding.exponent = random.chance(0.5) ? 2.19921875 : 1.8;
  }
  encoding.tone_told = random.chance(0.15) ? ToneTold::kFileTag : ToneTold::kIccProfile;
  encoding.channels = random.chance(0.15) ? 1 : 3;
  const double tag = random.uniform();
  encoding.resolution_tag = tag < 0.8   ? ResolutionTag::kRight
                            : tag < 0.9 ? ResolutionTag::kAbsent
                                        : ResolutionTag::kWrong;
  return encoding;
}

CameraSettings sample_camera(Random& random) {
  CameraSettings camera;
  camera.radial = random.uniform(-0.02, 0.02);
  camera.perspective_x = random.normal(0.0, 0.008);
  camera.perspective_y = random.normal(0.0, 0.008);
  return camera;
}

}  // namespace filmsim
