#pragma once

#include <cstdint>
#include <memory>
#include <string>

#include <tiffio.h>

namespace fogline {

/// What libtiff complained of through one handle, instead of printing it.
struct TiffComplaints {
  std::string first_error;
};

/// Options for a handle whose errors go to `complaints`, whose warnings go nowhere and which
/// allocates at most a bounded block at a time.
std::unique_ptr<TIFFOpenOptions, void (*)(TIFFOpenOptions*)> quiet_tiff_options(
    TiffComplaints& complaints);

/// A TIFF open for reading. One handle a thread.
class TiffHandle {
 public:
  /// Throws FileError where libtiff can't read the first directory.
  explicit TiffHandle(const std::string& path);
  ~TiffHandle();
  TiffHandle(const TiffHandle&) = delete;
  TiffHandle& operator=(const TiffHandle&) = delete;
  TiffHandle(TiffHandle&&) = delete;
  TiffHandle& operator=(TiffHandle&&) = delete;

  [[nodiscard]] TIFF* get() const { return tiff_; }
  [[nodiscard]] const std::string& error() const { return complaints_.first_error; }
  void forget_error() { complaints_.first_error.clear(); }

  /// The directory at `offset` of the file becomes current; throws FileError.
  void go_to(std::uint64_t directory_offset);

 private:
  std::string path_;
  TiffComplaints complaints_;
  TIFF* tiff_ = nullptr;
};

/// A tag of one 16-bit or 32-bit number, or `otherwise`.
std::uint16_t tiff_short(TIFF* tiff, std::uint32_t tag, std::uint16_t otherwise);
std::uint32_t tiff_long(TIFF* tiff, std::uint32_t tag, std::uint32_t otherwise);

}  // namespace fogline
