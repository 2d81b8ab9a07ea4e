#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// A number with a point, whatever the locale; absent where the text holds anything else.
std::optional<double> number_from_text(std::string_view text);
/// The same for a whole number.
std::optional<int> whole_number_from_text(std::string_view text);

/// The parts between separators, empty ones too.
std::vector<std::string> parts_of(const std::string& text, char separator);

/// "auto, holes, gap or none".
std::string choice_of(const std::vector<std::string_view>& words);
/// "measure, calibrate and card".
std::string list_of(const std::vector<std::string_view>& words);

/// Whether two names mean one file: written alike, or the same file on the disk.
bool same_file(const std::string& a, const std::string& b);

/// The first file that is named twice; absent where none is.
std::optional<std::string> file_named_twice(const std::vector<std::string>& files);

}  // namespace fogline
