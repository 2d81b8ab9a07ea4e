#pragma once

#include <fogline/base/refusal.h>

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace fogline {

/// A regular file open for reading at any place; never mapped. All refusals are FileError.
class InputFile {
 public:
  /// Throws FileError where `path` is absent, a folder, a device or not readable.
  explicit InputFile(std::string path);
  ~InputFile();
  InputFile(const InputFile&) = delete;
  InputFile& operator=(const InputFile&) = delete;
  InputFile(InputFile&&) = delete;
  InputFile& operator=(InputFile&&) = delete;

  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] std::uint64_t size() const { return size_; }
  [[nodiscard]] int descriptor() const { return descriptor_; }

  /// Reads up to `count` bytes from `offset` on; returns how many there were (0 at the end).
  std::size_t read_some(std::uint64_t offset, void* bytes, std::size_t count) const;

  /// Reads exactly `count` bytes; throws FileError (`breaks_off`) where the file ends before.
  void read_exactly(std::uint64_t offset, void* bytes, std::size_t count) const;

 private:
  std::string path_;
  int descriptor_ = -1;
  std::uint64_t size_ = 0;
};

/// Throws FileError; numbers and names in the order of the kind's row.
[[noreturn]] void refuse(const std::string& file, Refusal kind, std::vector<double> numbers = {},
                         std::vector<std::string> names = {});

/// Throws FileError: the file ends before its picture does.
[[noreturn]] void refuse_broken_off(const std::string& file);

/// Throws FileError: the picture's data are damaged; `detail` is what the decoder said (any text:
/// it is cut to one short line).
[[noreturn]] void refuse_damaged(const std::string& file, const std::string& detail);

}  // namespace fogline
