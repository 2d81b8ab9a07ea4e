#include "simulator/icc_profile.h"
#include "simulator/picture_files.h"

#include <bit>
#include <cmath>
#include <cstdio>
#include <memory>
#include <stdexcept>

#include <png.h>

namespace filmsim {
namespace {

struct CloseFile {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

// libpng reports errors by this call; it may not return.
[[noreturn]] void fail(png_structp /*png*/, png_const_charp message) {
  throw std::runtime_error(std::string("writing PNG failed: ") + message);
}

struct PngWriter {
  png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, fail, nullptr);
  png_infop info = png_create_info_struct(png);

  PngWriter() = default;
  PngWriter(const PngWriter&) = delete;
  PngWriter& operator=(const PngWriter&) = delete;
  ~PngWriter() { png_destroy_write_struct(&png, &info); }
};

void set_header(PngWriter& writer, const Picture& picture, const EncodingSettings& settings,
                double pixels_per_inch) {
  constexpr double kInchesPerMetre = 1000.0 / 25.4;
  png_set_IHDR(writer.png, writer.info, static_cast<png_uint_32>(picture.width),
               static_cast<png_uint_32>(picture.height), picture.bits,
               picture.channels == 1 ? PNG_COLOR_TYPE_GRAY : PNG_COLOR_TYPE_RGB, PNG_INTERLACE_NONE,
               PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  if (pixels_per_inch > 0.0) {
    const auto per_metre = static_cast<png_uint_32>(std::lround(pixels_per_inch * kInchesPerMetre));
    png_set_pHYs(writer.png, writer.info, per_metre, per_metre, PNG_RESOLUTION_METER);
  }
  if (settings.tone_told != ToneTold::kUntold) {
    const std::string profile = icc_profile(settings);
    png_set_iCCP(writer.png, writer.info, "scan", PNG_COMPRESSION_TYPE_BASE,
                 std::bit_cast<png_const_bytep>(profile.data()),
                 static_cast<png_uint_32>(profile.size()));
  }
}

}  // namespace

void write_png(const Picture& picture, const EncodingSettings& settings, double pixels_per_inch,
               const std::string& path) {
  const std::unique_ptr<std::FILE, CloseFile> file(std::fopen(path.c_str(), "wb"));
  if (!file) throw std::runtime_error("can't write " + path);
  PngWriter writer;
  png_init_io(writer.png, file.get());
  set_header(writer, picture, settings, pixels_per_inch);
  png_write_info(writer.png, writer.info);
  const std::size_t row =
      static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.channels);
  std::vector<png_byte> line;
  for (int y = 0; y < picture.height; ++y) {
    line.clear();
    for (std::size_t i = 0; i < row; ++i) {
      const unsigned code = picture.codes[row * static_cast<std::size_t>(y) + i];
      if (picture.bits == 16) line.push_back(static_cast<png_byte>(code >> 8U));
      line.push_back(static_cast<png_byte>(code & 0xffU));
    }
    png_write_row(writer.png, line.data());
  }
  png_write_end(writer.png, writer.info);
}

}  // namespace filmsim
