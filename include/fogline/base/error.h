#pragma once

#include <stdexcept>
#include <string>

namespace fogline {

/// A file that can't be read or written, or doesn't hold what it should. The message is one
/// sentence for the person at the scanner: what, where, what to do.
class FileError : public std::runtime_error {
 public:
  FileError(std::string file, const std::string& message)
      : std::runtime_error(message), file_(std::move(file)) {}
  [[nodiscard]] const std::string& file() const { return file_; }

 private:
  std::string file_;
};

}  // namespace fogline
