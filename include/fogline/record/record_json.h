#pragma once

#include <fogline/process/judge_roll.h>

#include <string>
#include <string_view>

namespace fogline {

/// One roll as it is reported. Every form of report (text, page, JSON) is made from this alone.
struct RollRecord : JudgedRoll {
  /// Version of the program that measured, such as "0.1.0".
  std::string tool_version;

  friend bool operator==(const RollRecord&, const RollRecord&) = default;
};

/// The record as JSON text (UTF-8, indented, closed by a line feed), exactly by
/// `calibration/report.schema.json`. Numbers are written so that they read back exactly, whatever
/// the locale: as many digits as that takes, which says nothing of their doubt. A value that isn't
/// known, or isn't finite, is null, and the object that holds it says why: in English in `reasons`,
/// as a fact in `why`. Bytes of file names that aren't UTF-8 are replaced.
std::string json_from_record(const RollRecord& record);

/// The record that a report's JSON text holds, of this or any older revision of version 1; `file`
/// is named where it is refused. Reading what `json_from_record` wrote gives an equal record, but
/// for numbers that aren't finite (absent, or 0), negative ones where only others make sense, and
/// names that aren't UTF-8. Keys and words of later revisions are passed over; see record_json.cc
/// for what a version promises. Throws FileError where the text is no report, is damaged, or is of
/// another version.
RollRecord record_from_json(std::string_view text, std::string_view file);

}  // namespace fogline
