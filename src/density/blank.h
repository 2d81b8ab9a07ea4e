#pragma once

#include <fogline/base/quantity.h>
#include <fogline/base/scan_source.h>

namespace fogline {

/// What a picture of the bare light (a blank scan) tells of a scan made at the same settings.
struct BlankLight {
  /// Light that bare light reads anywhere in the scan once the blank is divided out, per channel.
  PerChannel<double> level{};
  /// Share of the blank's pixels at the top code, greatest of the channels.
  double clipped_share = 0.0;
};

/// Divides the lamp's and the lens's unevenness out of a scan by its blank: every pixel becomes
/// light * level / blank at its place, where level is the blank's brightest. Both pictures must
/// have the same shape and channels; the blank may be read much coarser, which also averages its
/// noise away. A blank darker than a hundredth of its brightest divides by that, so that a mask's
/// edge makes no light.
BlankLight divide_by_blank(ScanGrid& grid, const ScanGrid& blank);

}  // namespace fogline
