#include "pixels/tiff_handle.h"

#include "files/input_file.h"

#include <array>
#include <cstdarg>
#include <cstdio>
#include <cstring>

namespace fogline {

namespace {

/// Largest block libtiff may ask for at once: the largest strip or tile that is decoded whole
/// (40 MB) in its largest stored form, with room to spare; lists of strips are far smaller.
constexpr tmsize_t largest_allocation_bytes = 96 << 20;

extern "C" int keep_error(TIFF* /*tiff*/, void* user, const char* /*module*/, const char* format,
                          va_list arguments) {
  auto* complaints = static_cast<TiffComplaints*>(user);
  if (complaints->first_error.empty()) {
    std::array<char, 256> text{};
    std::vsnprintf(text.data(), text.size(), format, arguments);
    complaints->first_error = text.data();
  }
  return 1;
}

/// Warnings are about odd tags, which are judged here anyway, but for one: where JPEG data end too
/// soon the decoder only warns, and fills the rest with grey.
extern "C" int watch_warning(TIFF* /*tiff*/, void* user, const char* /*module*/, const char* format,
                             va_list arguments) {
  auto* complaints = static_cast<TiffComplaints*>(user);
  std::array<char, 256> text{};
  std::vsnprintf(text.data(), text.size(), format, arguments);
  if (complaints->first_error.empty() && std::strstr(text.data(), "remature end") != nullptr) {
    complaints->first_error = text.data();
  }
  return 1;
}

}  // namespace

std::unique_ptr<TIFFOpenOptions, void (*)(TIFFOpenOptions*)> quiet_tiff_options(
    TiffComplaints& complaints) {
  std::unique_ptr<TIFFOpenOptions, void (*)(TIFFOpenOptions*)> options(TIFFOpenOptionsAlloc(),
                                                                       TIFFOpenOptionsFree);
  TIFFOpenOptionsSetMaxSingleMemAlloc(options.get(), largest_allocation_bytes);
  TIFFOpenOptionsSetErrorHandlerExtR(options.get(), keep_error, &complaints);
  TIFFOpenOptionsSetWarningHandlerExtR(options.get(), watch_warning, &complaints);
  return options;
}

TiffHandle::TiffHandle(const std::string& path) : path_(path) {
  const auto options = quiet_tiff_options(complaints_);
  // m: never mapped (a mapped file counts as resident and reads slower); c: uncompressed strips
  // stay as they are, for they are read without libtiff.
  tiff_ = TIFFOpenExt(path.c_str(), "rmc", options.get());
  if (tiff_ == nullptr) {
    refuse_damaged(path, complaints_.first_error);
  }
  forget_error();
}

TiffHandle::~TiffHandle() {
  TIFFClose(tiff_);
}

void TiffHandle::go_to(std::uint64_t directory_offset) {
  forget_error();
  if (TIFFSetSubDirectory(tiff_, directory_offset) == 0) {
    refuse_damaged(path_, complaints_.first_error);
  }
  forget_error();
}

std::uint16_t tiff_short(TIFF* tiff, std::uint32_t tag, std::uint16_t otherwise) {
  std::uint16_t value = 0;
  return TIFFGetField(tiff, tag, &value) == 1 ? value : otherwise;
}

std::uint32_t tiff_long(TIFF* tiff, std::uint32_t tag, std::uint32_t otherwise) {
  std::uint32_t value = 0;
  return TIFFGetField(tiff, tag, &value) == 1 ? value : otherwise;
}

}  // namespace fogline
