#pragma once

#include <fogline/base/refusal.h>

#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace fogline {

/// A file that can't be read or written, or doesn't hold what it should: which, and why as a fact.
/// `what()` is the file and the fact's code; `sentence_of` (words/refusal_words.h) says it in
/// English.
class FileError : public std::runtime_error {
 public:
  FileError(std::string file, Fact<Refusal> why)
      : std::runtime_error(file + ": " + std::string(fact_row(why.kind).code)),
        file_(std::move(file)),
        why_(std::move(why)) {}
  /// Numbers and names in the order of the kind's row.
  FileError(std::string file, Refusal kind, std::vector<double> numbers = {},
            std::vector<std::string> names = {})
      : FileError(std::move(file), {kind, std::move(numbers), std::move(names), {}}) {}

  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] const Fact<Refusal>& why() const { return why_; }

 private:
  std::string file_;
  Fact<Refusal> why_;
};

}  // namespace fogline
