#pragma once

#include <fogline/base/scan_source.h>

#include <memory>
#include <optional>
#include <string>

namespace fogline {

/// What the user says of a scan's files, over what they say of themselves.
struct OpenOptions {
  /// Absent: as the file says (ICC tone curve, else TIFF TransferFunction or gAMA/sRGB chunk, else
  /// assumed: 8 bits as sRGB; 16 bits unknown).
  std::optional<Transfer> transfer;
};

/// Opens a scan for reading: TIFF (every layout and codec of the installed library), PNG, JPEG,
/// told by content, not by name. Reads no pixel of a TIFF yet. Of several pages the largest full
/// one is read. White-is-zero codes are inverted before anything is counted or linearised. Float
/// samples are light from 0 to 1, divided by the largest value the file states, if it does; what
/// lies outside is held at the ends. Throws FileError where the file is absent, unreadable, not a
/// picture, or a kind of picture that can't be a scan (palette, one bit a sample, animation).
std::unique_ptr<ScanSource> open_scan(const std::string& path, const OpenOptions& options);

}  // namespace fogline
