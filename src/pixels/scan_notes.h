#pragma once

#include "pixels/scan_file.h"

#include <fogline/base/caution.h>
#include <fogline/base/scan_source.h>

#include <vector>

namespace fogline {

/// Adds a caution to what a file says of itself.
void add_caution(ScanInfo& info, CautionKind kind, Severity severity,
                 std::vector<double> numbers = {});

/// Pixels per millimetre from a resolution tag, where both directions agree and are possible; else
/// leaves it absent with the caution `resolution-tag-odd`.
void note_resolution(ScanInfo& info, double x_per_mm, double y_per_mm);

/// Decides the transfer where the file names none: 8 bits sRGB with the caution `transfer-assumed`,
/// wider integers linear but unknown, float linear by its nature.
void assume_transfer(OpenedPicture& picture, bool is_float);

/// Takes the tone curve of an embedded profile. False, with a caution, where it is of no use.
bool take_profile(OpenedPicture& picture, const void* profile, std::size_t bytes);

}  // namespace fogline
