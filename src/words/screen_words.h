#pragma once

#include <fogline/process/judge_roll.h>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// Titles of the report's one screen that the whole report hasn't.
std::string_view numbers_title();
std::string_view objections_title();

/// What stands against a roll's numbers, in a sentence.
struct Objection {
  Severity severity = Severity::note;
  /// For which scans it is, with a colon; empty where for all.
  std::string files;
  std::string sentence;
};

/// Files that weren't read, then the cautions of all scans, weightiest first, then what isn't
/// sure. Each once: what only some scans are told names them, and a doubt whose reason a caution
/// tells is left out.
std::vector<Objection> objections_of(const JudgedRoll& roll);

/// Where the rest is: on the page, if one was written, and behind `--full`.
std::string rest_sentence(const std::optional<std::string>& page);

}  // namespace fogline
