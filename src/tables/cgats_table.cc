#include "tables/cgats_table.h"

#include "files/input_file.h"

#include <algorithm>
#include <charconv>
#include <optional>
#include <sstream>

namespace fogline {

namespace {

/// Words of a line; a text in quotes is one word.
std::vector<std::string> words_of(const std::string& line) {
  std::vector<std::string> words;
  std::string word;
  bool quoted = false;
  bool begun = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
      begun = true;
    } else if (!quoted && (c == ' ' || c == '\t' || c == '\r')) {
      if (begun) {
        words.push_back(word);
      }
      word.clear();
      begun = false;
    } else if (!quoted && c == '#') {
      break;
    } else {
      word += c;
      begun = true;
    }
  }
  if (begun) {
    words.push_back(word);
  }
  return words;
}

/// Reads tables line by line.
class CgatsReader {
 public:
  CgatsReader(const std::string& text, const std::string& file) : stream_(text), file_(file) {}

  std::vector<ReferenceStep> steps() {
    std::vector<std::string> words;
    while (next(words)) {
      const std::string& key = words.front();
      if (key == "BEGIN_DATA_FORMAT") {
        read_format();
      } else if (key == "NUMBER_OF_SETS" && words.size() > 1) {
        sets_ = words[1];
      } else if (key == "BEGIN_DATA") {
        std::vector<ReferenceStep> found = read_data();
        if (!found.empty()) {
          return found;
        }
      }
    }
    refuse(file_, Refusal::reference_no_densities);
  }

 private:
  bool next(std::vector<std::string>& words) {
    std::string line;
    while (std::getline(stream_, line)) {
      ++line_;
      words = words_of(line);
      if (!words.empty()) {
        return true;
      }
    }
    return false;
  }

  void read_format() {
    fields_.clear();
    sets_.reset();
    std::vector<std::string> words;
    while (next(words)) {
      if (words.front() == "END_DATA_FORMAT") {
        return;
      }
      fields_.insert(fields_.end(), words.begin(), words.end());
    }
    refuse(file_, Refusal::reference_format_breaks_off);
  }

  [[nodiscard]] std::optional<std::size_t> field(const char* name) const {
    const auto found = std::find(fields_.begin(), fields_.end(), name);
    return found == fields_.end() ? std::nullopt
                                  : std::optional<std::size_t>(found - fields_.begin());
  }

  /// Steps of a table; empty where it isn't one of densities.
  std::vector<ReferenceStep> read_data() {
    const auto label = field("SAMPLE_ID");
    const auto density = field("D_VIS");
    std::vector<ReferenceStep> steps;
    std::vector<std::string> words;
    std::size_t rows = 0;
    while (next(words)) {
      if (words.front() == "END_DATA") {
        check_count(rows);
        return steps;
      }
      ++rows;
      if (words.size() != fields_.size()) {
        refuse(file_, Refusal::reference_row_unfit,
               {static_cast<double>(words.size()), static_cast<double>(line_),
                static_cast<double>(fields_.size())});
      }
      if (label && density) {
        steps.push_back({words[*label], density_from_text(words[*density], file_, line_), {}});
      }
    }
    refuse(file_, Refusal::reference_data_break_off);
  }

  void check_count(std::size_t rows) const {
    if (sets_ && *sets_ != std::to_string(rows)) {
      refuse(file_, Refusal::reference_sets_unfit, {static_cast<double>(rows)}, {*sets_});
    }
  }

  std::istringstream stream_;
  const std::string& file_;
  int line_ = 0;
  std::vector<std::string> fields_;
  std::optional<std::string> sets_;
};

}  // namespace

bool is_cgats(const std::string& text) {
  return text.rfind("CGATS", 0) == 0 || text.rfind("ISO28178", 0) == 0 ||
         text.find("BEGIN_DATA_FORMAT") != std::string::npos;
}

std::vector<ReferenceStep> steps_from_cgats(const std::string& text, const std::string& file) {
  return CgatsReader(text, file).steps();
}

double density_from_text(const std::string& text, const std::string& file, int line) {
  constexpr double greatest_density = 6.0;
  constexpr std::size_t longest_quoted = 40;
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size() ||
      !(value >= 0.0 && value <= greatest_density)) {
    refuse(file, Refusal::reference_no_density, {static_cast<double>(line)},
           {text.substr(0, longest_quoted)});
  }
  return value;
}

}  // namespace fogline
