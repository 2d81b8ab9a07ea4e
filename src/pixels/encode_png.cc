#include "pixels/encode_picture.h"

#include <csetjmp>
#include <stdexcept>

#include <png.h>

namespace fogline {

namespace {

/// What the jump-guarded part of the encoder works on: nothing in it needs destroying.
struct PngTarget {
  const Raster<std::uint8_t>* picture = nullptr;
  std::vector<std::uint8_t>* bytes = nullptr;
  png_structp png = nullptr;
  png_infop info = nullptr;
};

void append(png_structp png, png_bytep bytes, png_size_t count) {
  auto* target = static_cast<PngTarget*>(png_get_io_ptr(png));
  bool appended = true;
  try {
    target->bytes->insert(target->bytes->end(), bytes, bytes + count);
  } catch (...) {
    appended = false;
  }
  if (!appended) {
    png_longjmp(png, 1);
  }
}

void on_warning(png_structp /*png*/, png_const_charp /*message*/) {}

[[noreturn]] void on_error(png_structp png, png_const_charp /*message*/) {
  png_longjmp(png, 1);
}

bool write_rows(PngTarget& target) {
  if (setjmp(png_jmpbuf(target.png)) != 0) {
    return false;
  }
  const Raster<std::uint8_t>& picture = *target.picture;
  png_set_write_fn(target.png, &target, append, nullptr);
  const int color = picture.channels() == 1 ? PNG_COLOR_TYPE_GRAY : PNG_COLOR_TYPE_RGB;
  png_set_IHDR(target.png, target.info, static_cast<png_uint_32>(picture.width()),
               static_cast<png_uint_32>(picture.height()), 8, color, PNG_INTERLACE_NONE,
               PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  png_write_info(target.png, target.info);
  for (int y = 0; y < picture.height(); ++y) {
    png_write_row(target.png, picture.row(y));
  }
  png_write_end(target.png, nullptr);
  return true;
}

}  // namespace

std::vector<std::uint8_t> encode_png(const Raster<std::uint8_t>& picture) {
  if (picture.empty() || (picture.channels() != 1 && picture.channels() != 3)) {
    throw std::invalid_argument("a picture to encode needs pixels and 1 or 3 channels");
  }
  std::vector<std::uint8_t> bytes;
  PngTarget target;
  target.picture = &picture;
  target.bytes = &bytes;
  target.png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, on_error, on_warning);
  target.info = target.png != nullptr ? png_create_info_struct(target.png) : nullptr;
  const bool written = target.info != nullptr && write_rows(target);
  png_destroy_write_struct(&target.png, &target.info);
  if (!written) {
    throw std::runtime_error("encode_png");
  }
  return bytes;
}

}  // namespace fogline
