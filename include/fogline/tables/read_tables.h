#pragma once

#include <fogline/density/scanner_calibration.h>
#include <fogline/process/roll_card.h>

#include <memory>
#include <string>
#include <string_view>

namespace fogline {

struct PriorKnowledge;
struct ScanKnowledge;

/// The data of `calibration/` as this build ships it: for `judge_roll`.
std::shared_ptr<const PriorKnowledge> shipped_prior_knowledge();

/// The part of it that scans are read with: for `MeasureOptions` and calibrations.
std::shared_ptr<const ScanKnowledge> shipped_scan_knowledge();

/// Reads a roll card (TOML). Throws FileError with the line, the key and what was expected:
/// unknown keys, values of the wrong type or out of range, a missing name.
RollCard read_roll_card(const std::string& path);

/// What a scanner file says it is, in its first lines.
inline constexpr std::string_view scanner_file_format = "fogline scanner";

/// A calibration as a scanner file: JSON that people can read, with the version of its format and a
/// checksum over everything in it. `calibration.checksum` is ignored: the text gets its own.
std::string scanner_file_text(const ScannerCalibration& calibration);

/// Reads a scanner file; `checksum` is then that of the file. Throws FileError where it
/// is no scanner file, of another version, damaged or edited (checksum), or holds what can't be.
ScannerCalibration read_scanner_file(const std::string& file);

/// Reads a wedge's densities: CSV `step,density` with an optional third column u95 (comma,
/// semicolon or tab between; a heading line and lines that begin with # are skipped), or ISO 28178
/// (CGATS.17) text, its first table that has SAMPLE_ID and D_VIS. Steps may be listed rising or
/// falling. Throws FileError, with the line where a line isn't understood, where densities neither
/// rise nor fall all the way, there are fewer than 5 or more than 41, a step is named twice, or a
/// table isn't as long as it says.
WedgeReference read_wedge_reference(const std::string& file);

}  // namespace fogline
