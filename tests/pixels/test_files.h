#pragma once

// Small pictures written by the libraries themselves, so that the readers are checked against
// files they did not make.

#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <stdexcept>
#include <string>
#include <vector>

#include <tiffio.h>

namespace fogline::test {

/// A folder of its own that is removed at the end.
class TempFolder {
 public:
  TempFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "fogline-io-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) {
      throw std::runtime_error("no temporary folder");
    }
    path_ = name;
  }
  ~TempFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;
  TempFolder(TempFolder&&) = delete;
  TempFolder& operator=(TempFolder&&) = delete;

  [[nodiscard]] std::string file(const std::string& name) const { return (path_ / name).string(); }
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

inline std::vector<char> bytes_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

inline void write_bytes(const std::string& path, const std::vector<char>& bytes) {
  std::ofstream(path, std::ios::binary)
      .write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

/// The picture all tests store: a code of 0 to 65535 for each place, rough and with full codes.
inline std::uint16_t test_code(int x, int y, int channel) {
  const auto mixed = static_cast<std::uint32_t>(x * 2654435 + y * 40503 + channel * 9973 + 77);
  const std::uint32_t noise = (mixed * 2246822519U) >> 16U;
  return noise % 17 == 0 ? 65535 : static_cast<std::uint16_t>(noise);
}

struct TiffSpec {
  int width = 61;
  int height = 47;
  int colours = 3;
  int extra = 0;
  int bits = 16;
  int sample_format = SAMPLEFORMAT_UINT;
  int photometric = -1;
  int compression = COMPRESSION_NONE;
  int predictor = 1;
  bool separate = false;
  /// 0: strips.
  int tile = 0;
  int rows_per_strip = 7;
  /// w: classic, w8: BigTIFF, wb and wl: a given byte order.
  std::string mode = "w";
  std::function<std::uint16_t(int, int, int)> code = test_code;
  std::function<void(TIFF*)> more_tags;

  [[nodiscard]] int samples() const { return colours + extra; }
};

/// One sample in the spec's type, appended: white-is-zero codes inverted, 8 bits the upper half.
inline void append_sample(const TiffSpec& spec, int x, int y, int channel,
                          std::vector<std::uint8_t>& out) {
  std::uint16_t code = spec.code(x, y, channel);
  if (spec.photometric == PHOTOMETRIC_MINISWHITE) {
    code = static_cast<std::uint16_t>(~code);
  }
  const auto put = [&](const auto& value) {
    const auto* bytes = reinterpret_cast<const std::uint8_t*>(&value);
    out.insert(out.end(), bytes, bytes + sizeof(value));
  };
  if (spec.sample_format == SAMPLEFORMAT_IEEEFP) {
    put(static_cast<float>(code) / 65535.0F);
  } else if (spec.bits == 8) {
    out.push_back(static_cast<std::uint8_t>(code >> 8U));
  } else if (spec.bits == 16) {
    put(code);
  } else {
    put(static_cast<std::uint32_t>(code) * 65537U);
  }
}

inline void set_tags(TIFF* tiff, const TiffSpec& spec) {
  TIFFSetField(tiff, TIFFTAG_IMAGEWIDTH, spec.width);
  TIFFSetField(tiff, TIFFTAG_IMAGELENGTH, spec.height);
  TIFFSetField(tiff, TIFFTAG_BITSPERSAMPLE, spec.bits);
  TIFFSetField(tiff, TIFFTAG_SAMPLESPERPIXEL, spec.samples());
  TIFFSetField(tiff, TIFFTAG_SAMPLEFORMAT, spec.sample_format);
  TIFFSetField(tiff, TIFFTAG_COMPRESSION, spec.compression);
  const int usual = spec.colours == 3 ? PHOTOMETRIC_RGB : PHOTOMETRIC_MINISBLACK;
  TIFFSetField(tiff, TIFFTAG_PHOTOMETRIC, spec.photometric >= 0 ? spec.photometric : usual);
  TIFFSetField(tiff, TIFFTAG_PLANARCONFIG,
               spec.separate ? PLANARCONFIG_SEPARATE : PLANARCONFIG_CONTIG);
  if (spec.predictor != 1) {
    TIFFSetField(tiff, TIFFTAG_PREDICTOR, spec.predictor);
  }
  if (spec.extra > 0) {
    const std::vector<std::uint16_t> kinds(static_cast<std::size_t>(spec.extra), 0);
    TIFFSetField(tiff, TIFFTAG_EXTRASAMPLES, spec.extra, kinds.data());
  }
  if (spec.tile > 0) {
    TIFFSetField(tiff, TIFFTAG_TILEWIDTH, spec.tile);
    TIFFSetField(tiff, TIFFTAG_TILELENGTH, spec.tile);
  } else {
    TIFFSetField(tiff, TIFFTAG_ROWSPERSTRIP, spec.rows_per_strip);
  }
  if (spec.compression == COMPRESSION_JPEG && spec.photometric == PHOTOMETRIC_YCBCR) {
    TIFFSetField(tiff, TIFFTAG_JPEGCOLORMODE, JPEGCOLORMODE_RGB);
  }
  if (spec.more_tags) {
    spec.more_tags(tiff);
  }
}

/// Writes the spec's picture as the current directory of `tiff`.
inline void write_page(TIFF* tiff, const TiffSpec& spec) {
  set_tags(tiff, spec);
  const int planes = spec.separate ? spec.samples() : 1;
  const int together = spec.separate ? 1 : spec.samples();
  const int step_x = spec.tile > 0 ? spec.tile : spec.width;
  const int step_y = spec.tile > 0 ? spec.tile : 1;
  for (int plane = 0; plane < planes; ++plane) {
    for (int y = 0; y < spec.height; y += step_y) {
      for (int x = 0; x < spec.width; x += step_x) {
        std::vector<std::uint8_t> bytes;
        for (int v = y; v < y + step_y; ++v) {
          for (int u = x; u < x + step_x; ++u) {
            for (int c = 0; c < together; ++c) {
              append_sample(spec, u, v, plane + c, bytes);
            }
          }
        }
        const auto row = static_cast<std::uint32_t>(y);
        const auto sample = static_cast<std::uint16_t>(plane);
        if (spec.tile > 0) {
          TIFFWriteTile(tiff, bytes.data(), static_cast<std::uint32_t>(x), row, 0, sample);
        } else {
          TIFFWriteScanline(tiff, bytes.data(), row, sample);
        }
      }
    }
  }
}

inline void write_tiff(const std::string& path, const TiffSpec& spec) {
  TIFFSetWarningHandler(nullptr);
  TIFF* tiff = TIFFOpen(path.c_str(), spec.mode.c_str());
  if (tiff == nullptr) {
    throw std::runtime_error("can't write " + path);
  }
  write_page(tiff, spec);
  TIFFClose(tiff);
}

}  // namespace fogline::test
