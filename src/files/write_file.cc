#include "files/write_file.h"

#include "files/input_file.h"

#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace fogline {

namespace {

/// Other names tried beside the file, should earlier ones be taken by leftovers.
constexpr int most_names = 100;

[[noreturn]] void refuse_writing(const std::string& path, int error_number) {
  refuse(path, Refusal::cant_write, {}, {std::generic_category().message(error_number)});
}

/// A file being written: closed, and removed unless it has been kept.
class OutputFile {
 public:
  OutputFile(std::string name, int flags)
      : name_(std::move(name)), descriptor_(::open(name_.c_str(), flags | O_CLOEXEC, 0666)) {}
  ~OutputFile() {
    if (descriptor_ >= 0) {
      ::close(descriptor_);
    }
    if (removes_) {
      ::unlink(name_.c_str());
    }
  }
  OutputFile(const OutputFile&) = delete;
  OutputFile& operator=(const OutputFile&) = delete;
  OutputFile(OutputFile&&) = delete;
  OutputFile& operator=(OutputFile&&) = delete;

  [[nodiscard]] bool is_open() const { return descriptor_ >= 0; }
  [[nodiscard]] const std::string& name() const { return name_; }
  void remove_at_end(bool removes) { removes_ = removes; }

  /// Each returns 0 or the error's number.
  int write(std::string_view bytes) const {
    while (!bytes.empty()) {
      const ssize_t done = ::write(descriptor_, bytes.data(), bytes.size());
      if (done < 0 && errno != EINTR) {
        return errno;
      }
      bytes.remove_prefix(done > 0 ? static_cast<std::size_t>(done) : 0);
    }
    return 0;
  }
  [[nodiscard]] int sync() const { return ::fsync(descriptor_) == 0 ? 0 : errno; }
  int close() {
    const int result = ::close(descriptor_);
    descriptor_ = -1;
    return result == 0 ? 0 : errno;
  }

 private:
  std::string name_;
  int descriptor_;
  bool removes_ = false;
};

/// The place itself, behind a link if `path` is one.
std::string place_of(const std::string& path) {
  std::error_code ignored;
  const std::filesystem::path resolved = std::filesystem::canonical(path, ignored);
  return resolved.empty() ? path : resolved.string();
}

/// A device or pipe, which can't be replaced by renaming.
bool is_special(const std::string& place) {
  struct stat status {};
  return ::stat(place.c_str(), &status) == 0 && !S_ISREG(status.st_mode) &&
         !S_ISDIR(status.st_mode);
}

void write_beside_and_rename(const std::string& path, const std::string& place,
                             std::string_view bytes) {
  for (int i = 0; i < most_names; ++i) {
    std::string name = place;
    name.append(".").append(std::to_string(::getpid())).append("-");
    name.append(std::to_string(i)).append(".part");
    OutputFile file(std::move(name), O_WRONLY | O_CREAT | O_EXCL);
    if (!file.is_open() && errno == EEXIST) {
      continue;
    }
    if (!file.is_open()) {
      refuse_writing(path, errno);
    }
    file.remove_at_end(true);
    int failed = file.write(bytes);
    failed = failed != 0 ? failed : file.sync();
    failed = failed != 0 ? failed : file.close();
    if (failed == 0 && std::rename(file.name().c_str(), place.c_str()) != 0) {
      failed = errno;
    }
    if (failed != 0) {
      refuse_writing(path, failed);
    }
    file.remove_at_end(false);
    return;
  }
  refuse_writing(path, EEXIST);
}

}  // namespace

void write_file(const std::string& path, std::string_view bytes) {
  const std::string place = place_of(path);
  if (!is_special(place)) {
    write_beside_and_rename(path, place, bytes);
    return;
  }
  const OutputFile file(place, O_WRONLY);
  const int failed = file.is_open() ? file.write(bytes) : errno;
  if (failed != 0) {
    refuse_writing(path, failed);
  }
}

}  // namespace fogline
