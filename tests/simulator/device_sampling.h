// Random devices and how their files are written.
#pragma once

#include "simulator/random.h"
#include "simulator/scenario.h"

namespace filmsim {

enum class Device { kFlatbed, kCamera, kFilmScanner };

ScannerSettings sample_scanner(Device device, Random& random);
/// 16-bit TIFF whose tone curve is told.
EncodingSettings sample_encoding(Random& random);
CameraSettings sample_camera(Random& random);

}  // namespace filmsim
