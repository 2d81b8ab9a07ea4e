#include "files/input_file.h"

#include <fogline/base/refusal.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cerrno>
#include <cstring>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace fogline {

namespace {

/// Longest piece of a decoder's own words that is kept: one line of a terminal, with the file.
constexpr std::size_t longest_detail = 120;

std::string reason_of(int error_number) {
  return std::generic_category().message(error_number);
}

std::string one_short_line(const std::string& text) {
  std::string line;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    line += std::isprint(byte) != 0 ? c : ' ';
    if (line.size() >= longest_detail) {
      break;
    }
  }
  while (!line.empty() && (line.back() == '.' || line.back() == ' ')) {
    line.pop_back();
  }
  return line;
}

}  // namespace

InputFile::InputFile(std::string path) : path_(std::move(path)) {
  // O_NONBLOCK: opening a pipe must not wait for a writer.
  descriptor_ = ::open(path_.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  if (descriptor_ < 0) {
    const int error_number = errno;
    refuse(path_, Refusal::cant_open, {}, {reason_of(error_number)});
  }
  struct stat status {};
  const bool known = ::fstat(descriptor_, &status) == 0;
  const bool regular = known && S_ISREG(status.st_mode);
  if (!regular) {
    const bool folder = known && S_ISDIR(status.st_mode);
    ::close(descriptor_);
    refuse(path_, folder ? Refusal::is_folder : Refusal::is_no_file);
  }
  size_ = static_cast<std::uint64_t>(status.st_size);
  if (size_ == 0) {
    ::close(descriptor_);
    refuse(path_, Refusal::is_empty);
  }
}

InputFile::~InputFile() {
  ::close(descriptor_);
}

std::size_t InputFile::read_some(std::uint64_t offset, void* bytes, std::size_t count) const {
  std::size_t done = 0;
  while (done < count && offset + done < size_) {
    const ssize_t got = ::pread(descriptor_, static_cast<char*>(bytes) + done, count - done,
                                static_cast<off_t>(offset + done));
    if (got < 0 && errno == EINTR) {
      continue;
    }
    if (got < 0) {
      const int error_number = errno;
      refuse(path_, Refusal::cant_read_on, {}, {reason_of(error_number)});
    }
    if (got == 0) {
      break;
    }
    done += static_cast<std::size_t>(got);
  }
  return done;
}

void InputFile::read_exactly(std::uint64_t offset, void* bytes, std::size_t count) const {
  if (read_some(offset, bytes, count) != count) {
    refuse_broken_off(path_);
  }
}

void refuse(const std::string& file, Refusal kind, std::vector<double> numbers,
            std::vector<std::string> names) {
  throw FileError(file, kind, std::move(numbers), std::move(names));
}

void refuse_broken_off(const std::string& file) {
  refuse(file, Refusal::breaks_off);
}

void refuse_damaged(const std::string& file, const std::string& detail) {
  std::string line = one_short_line(detail);
  if (line.empty()) {
    refuse(file, Refusal::damaged);
  }
  refuse(file, Refusal::undecodable, {}, {std::move(line)});
}

}  // namespace fogline
