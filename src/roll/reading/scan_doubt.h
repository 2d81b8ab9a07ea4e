#pragma once

#include "roll/reading/strip_reading.h"

#include <fogline/base/scan_source.h>
#include <fogline/density/doubt.h>

namespace fogline {

/// What made a scan: as the person told, else a camera where the file says so, else as its
/// calibration says.
ScannerDevice device_of(const ScanInfo& info, ScannerDevice told,
                        const ScannerCalibration* scanner);

/// Whether a scan looks like a camera's finished picture, whose tones a maker has bent: it isn't
/// linear, and has the camera's record, light that falls off as no scanner's does, or (eight bits
/// on a curve that nobody told) a base thinner than film has. Editors and messengers drop the
/// record, so it alone won't do; a profile doesn't undo what was done to the picture.
bool looks_finished(const ScanInfo& info, const StripReading& reading);

/// What makes the densities of a strip doubtful, from its readings and from the kind of scan. Where
/// the reading has a calibration, it must outlive the result.
DoubtSources doubt_of(const ScanInfo& info, const StripReading& reading);

/// The same for clear film: where it was read in the rebate, between the holes that zero was read
/// from, lamp and lens have little room to differ.
DoubtSources doubt_of_clear_film(const ScanInfo& info, const StripReading& reading);

}  // namespace fogline
