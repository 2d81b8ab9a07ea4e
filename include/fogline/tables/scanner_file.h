#pragma once

#include <fogline/density/scanner_calibration.h>

#include <string>
#include <string_view>

namespace fogline {

/// What a scanner file says it is, in its first lines.
inline constexpr std::string_view scanner_file_format = "fogline scanner";

/// A calibration as a scanner file: JSON that people can read, with the version of its format and a
/// checksum over everything in it. `calibration.checksum` is ignored: the text gets its own.
std::string scanner_file_text(const ScannerCalibration& calibration);

/// Reads a scanner file; `checksum` is then that of the file. Throws FileError where it
/// is no scanner file, of another version, damaged or edited (checksum), or holds what can't be.
ScannerCalibration read_scanner_file(const std::string& file);

}  // namespace fogline
