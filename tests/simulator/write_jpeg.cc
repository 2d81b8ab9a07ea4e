#include "simulator/icc_profile.h"
#include "simulator/picture_files.h"

#include <bit>
#include <cmath>
#include <cstdio>  // before jpeglib.h, which needs FILE
#include <memory>
#include <stdexcept>

#include <jpeglib.h>

namespace filmsim {
namespace {

struct CloseFile {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

[[noreturn]] void fail(j_common_ptr /*jpeg*/) {
  throw std::runtime_error("writing JPEG failed");
}

struct JpegWriter {
  jpeg_compress_struct jpeg{};
  jpeg_error_mgr errors{};

  JpegWriter() {
    jpeg.err = jpeg_std_error(&errors);
    errors.error_exit = fail;
    jpeg_create_compress(&jpeg);
  }
  JpegWriter(const JpegWriter&) = delete;
  JpegWriter& operator=(const JpegWriter&) = delete;
  ~JpegWriter() { jpeg_destroy_compress(&jpeg); }
};

void start(jpeg_compress_struct& jpeg, const Picture& picture, const EncodingSettings& settings,
           double pixels_per_inch) {
  jpeg.image_width = static_cast<JDIMENSION>(picture.width);
  jpeg.image_height = static_cast<JDIMENSION>(picture.height);
  jpeg.input_components = picture.channels;
  jpeg.in_color_space = picture.channels == 1 ? JCS_GRAYSCALE : JCS_RGB;
  jpeg_set_defaults(&jpeg);
  jpeg_set_quality(&jpeg, settings.jpeg_quality, TRUE);
  if (picture.channels == 3) {
    jpeg.comp_info[0].h_samp_factor = settings.chroma == ChromaSampling::kWhole ? 1 : 2;
    jpeg.comp_info[0].v_samp_factor = settings.chroma == ChromaSampling::kHalf ? 2 : 1;
  }
  if (pixels_per_inch > 0.0) {
    jpeg.density_unit = 1;
    jpeg.X_density = jpeg.Y_density = static_cast<UINT16>(std::lround(pixels_per_inch));
  }
  jpeg_start_compress(&jpeg, TRUE);
  if (settings.tone_told != ToneTold::kUntold) {
    const std::string profile = icc_profile(settings);
    jpeg_write_icc_profile(&jpeg, std::bit_cast<const JOCTET*>(profile.data()),
                           static_cast<unsigned>(profile.size()));
  }
}

}  // namespace

void write_jpeg(const Picture& picture, const EncodingSettings& settings, double pixels_per_inch,
                const std::string& path) {
  const std::unique_ptr<std::FILE, CloseFile> file(std::fopen(path.c_str(), "wb"));
  if (!file) throw std::runtime_error("can't write " + path);
  JpegWriter writer;
  jpeg_stdio_dest(&writer.jpeg, file.get());
  start(writer.jpeg, picture, settings, pixels_per_inch);
  const std::size_t row =
      static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.channels);
  std::vector<JSAMPLE> line(row);
  for (int y = 0; y < picture.height; ++y) {
    for (std::size_t i = 0; i < row; ++i) {
      line[i] = static_cast<JSAMPLE>(picture.codes[row * static_cast<std::size_t>(y) + i]);
    }
    JSAMPROW rows = line.data();
    jpeg_write_scanlines(&writer.jpeg, &rows, 1);
  }
  jpeg_finish_compress(&writer.jpeg);
}

}  // namespace filmsim
