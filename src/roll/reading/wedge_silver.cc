#include "roll/reading/wedge_silver.h"

namespace fogline {

namespace {

// Callier's factor Q is 1.0 to 1.05 over a large near panel, 1.0 to 1.2 on flatbeds, 1.2 to 1.4 in
// collimated film scanners (common practice, no source): the middle of each range is taken. Where
// it is dQ off, clear film of 0.25 base and 0.05 fog is read 0.73 dQ of its base wrong, and under
// dense silver, where the slope of silver's scale reaches 1 + 1.14 (Q - 1), about 1.1 dQ. Half
// widths that hold 95 of 100 in the range; wedge and film differ in Q by 3 to 5 % where it is
// large.
constexpr WedgeSilver of_cameras{1.025, 0.017, 0.028, 0.01};
constexpr WedgeSilver of_flatbeds{1.10, 0.069, 0.11, 0.03};
constexpr WedgeSilver of_film_scanners{1.30, 0.071, 0.10, 0.05};
constexpr WedgeSilver of_others{1.18, 0.155, 0.25, 0.045};

}  // namespace

WedgeSilver wedge_silver(ScannerDevice device) {
  switch (device) {
    case ScannerDevice::camera:
      return of_cameras;
    case ScannerDevice::flatbed:
      return of_flatbeds;
    case ScannerDevice::film_scanner:
      return of_film_scanners;
    case ScannerDevice::unknown:
      break;
  }
  return of_others;
}

}  // namespace fogline
