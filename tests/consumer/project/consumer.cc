// Uses fogline as a stranger would: public headers only. Exit status 0 if the library does what its
// headers promise.
#include <fogline/base/channels.h>
#include <fogline/base/error.h>
#include <fogline/base/light_raster.h>
#include <fogline/pixels/open_scan.h>

#include <cmath>
#include <iostream>

namespace {

bool keeps_light() {
  fogline::LightRaster raster(2, 1, 1);
  raster.set_light(1, 0, 0, 0.01F);
  // The raster rounds to 0.0002 in density up to D 2, says its header.
  return std::abs(fogline::density_from_transmittance(raster.light(1, 0, 0)) - 2.0) < 0.0002;
}

bool refuses_absent_scan() {
  try {
    fogline::open_scan("no-such-scan.tif", {});
  } catch (const fogline::FileError& error) {
    return error.file() == "no-such-scan.tif";
  }
  return false;
}

}  // namespace

int main() {
  if (!keeps_light() || !refuses_absent_scan()) {
    std::cerr << "The installed library does not keep the promises of its headers.\n";
    return 1;
  }
  return 0;
}
