#include "pixels/encode_picture.h"

#include <algorithm>
#include <csetjmp>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <stdexcept>

// jpeglib.h needs the types of <cstdio> before it.
#include <jpeglib.h>

namespace fogline {

namespace {

struct JpegTarget {
  jpeg_compress_struct encoder{};
  jpeg_error_mgr errors{};
  std::jmp_buf jump{};
  unsigned char* bytes = nullptr;
  unsigned long count = 0;
};

[[noreturn]] void on_error(j_common_ptr encoder) {
  std::longjmp(static_cast<JpegTarget*>(encoder->client_data)->jump, 1);
}

void on_message(j_common_ptr /*encoder*/, int /*level*/) {}

bool write_rows(JpegTarget& target, const Raster<std::uint8_t>& picture, int quality) {
  if (setjmp(target.jump) != 0) {
    return false;
  }
  jpeg_compress_struct& encoder = target.encoder;
  jpeg_create_compress(&encoder);
  encoder.client_data = &target;
  jpeg_mem_dest(&encoder, &target.bytes, &target.count);
  encoder.image_width = static_cast<JDIMENSION>(picture.width());
  encoder.image_height = static_cast<JDIMENSION>(picture.height());
  encoder.input_components = picture.channels();
  encoder.in_color_space = picture.channels() == 1 ? JCS_GRAYSCALE : JCS_RGB;
  jpeg_set_defaults(&encoder);
  jpeg_set_quality(&encoder, quality, TRUE);
  jpeg_start_compress(&encoder, TRUE);
  for (int y = 0; y < picture.height(); ++y) {
    // libjpeg's interface is older than const; it doesn't write to its input.
    JSAMPROW rows[1] = {const_cast<JSAMPROW>(picture.row(y))};
    jpeg_write_scanlines(&encoder, rows, 1);
  }
  jpeg_finish_compress(&encoder);
  return true;
}

}  // namespace

std::vector<std::uint8_t> encode_jpeg(const Raster<std::uint8_t>& picture, int quality) {
  if (picture.empty() || (picture.channels() != 1 && picture.channels() != 3)) {
    throw std::invalid_argument("a picture to encode needs pixels and 1 or 3 channels");
  }
  JpegTarget target;
  target.encoder.err = jpeg_std_error(&target.errors);
  target.encoder.client_data = &target;
  target.errors.error_exit = on_error;
  target.errors.emit_message = on_message;
  const bool written = write_rows(target, picture, std::clamp(quality, 1, 100));
  jpeg_destroy_compress(&target.encoder);
  const std::unique_ptr<unsigned char, void (*)(void*)> owned(target.bytes, std::free);
  if (!written) {
    throw std::runtime_error("encode_jpeg");
  }
  return {owned.get(), owned.get() + target.count};
}

}  // namespace fogline
