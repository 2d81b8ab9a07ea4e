// A small file of a test's own, gone with it.
#pragma once

#include <filesystem>
#include <fstream>
#include <string>

#include <unistd.h>

namespace fogline {

class WrittenFile {
 public:
  WrittenFile(const std::string& name, const std::string& text)
      : path_(std::filesystem::temp_directory_path() /
              ("fogline-" + std::to_string(::getpid()) + "-" + name)) {
    std::ofstream(path_, std::ios::binary) << text;
  }
  ~WrittenFile() {
    std::error_code none;
    std::filesystem::remove(path_, none);
  }
  WrittenFile(const WrittenFile&) = delete;
  WrittenFile& operator=(const WrittenFile&) = delete;
  WrittenFile(WrittenFile&&) = delete;
  WrittenFile& operator=(WrittenFile&&) = delete;

  [[nodiscard]] std::string path() const { return path_.string(); }

 private:
  std::filesystem::path path_;
};

}  // namespace fogline
