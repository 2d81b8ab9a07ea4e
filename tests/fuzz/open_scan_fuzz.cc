// Feeds any bytes to open_scan as a file in memory, and reads what it opens: all of it coarsely, a
// part of it finely. Only FileError may come out.

#include <fogline/base/refusal.h>
#include <fogline/pixels/open_scan.h>
#include <fogline/words/refusal_words.h>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include <sys/mman.h>
#include <unistd.h>

namespace {

constexpr std::int64_t survey_pixels = 10'000;
constexpr int part_side_px = 50;

/// The path of a file in memory that holds the bytes.
class MemoryFile {
 public:
  MemoryFile(const std::uint8_t* bytes, std::size_t count) : descriptor_(memfd_create("scan", 0)) {
    while (count > 0) {
      const ssize_t done = ::write(descriptor_, bytes, count);
      if (done <= 0) {
        std::abort();
      }
      bytes += done;
      count -= static_cast<std::size_t>(done);
    }
  }
  ~MemoryFile() { ::close(descriptor_); }
  MemoryFile(const MemoryFile&) = delete;
  MemoryFile& operator=(const MemoryFile&) = delete;
  MemoryFile(MemoryFile&&) = delete;
  MemoryFile& operator=(MemoryFile&&) = delete;

  [[nodiscard]] std::string path() const { return "/proc/self/fd/" + std::to_string(descriptor_); }

 private:
  int descriptor_;
};

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t count) {
  const MemoryFile file(bytes, count);
  try {
    const auto scan = fogline::open_scan(file.path(), {});
    scan->survey({survey_pixels, {}, true}, {});
    scan->set_transfer({fogline::TransferKind::linear, {}, fogline::TransferSource::option});
    scan->survey({survey_pixels}, {});
    scan->survey({survey_pixels}, {});
  } catch (const fogline::FileError& error) {
    // The refusal must be a sentence, whatever bytes the decoders were quoting.
    const std::string message = sentence_of(error);
    if (message.empty() || message.back() != '.' || message.find('\n') != std::string::npos) {
      std::abort();
    }
  }
  return 0;
}
