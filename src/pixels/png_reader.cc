#include "pixels/png_reader.h"

#include "files/input_file.h"
#include "pixels/limits.h"

#include <algorithm>
#include <array>
#include <bit>
#include <csetjmp>
#include <cstdio>
#include <cstring>

#include <png.h>

namespace fogline {

namespace {

/// Largest chunk libpng may hold (profiles, texts), and how many of them.
constexpr png_alloc_size_t largest_chunk_bytes = 16 << 20;
constexpr png_uint_32 most_chunks = 256;

/// A PNG being read by libpng. libpng reports errors by a jump; every call to it goes through
/// `guarded`, whose frame and callees hold nothing that a jump would leave behind undestroyed.
class PngFile {
 public:
  explicit PngFile(const std::string& path)
      : file_(path),
        png_(png_create_read_struct(PNG_LIBPNG_VER_STRING, this, on_error, on_warning)),
        info_(png_ != nullptr ? png_create_info_struct(png_) : nullptr) {
    if (info_ == nullptr) {
      png_destroy_read_struct(&png_, nullptr, nullptr);
      refuse(path, Refusal::no_memory);
    }
  }
  ~PngFile() { png_destroy_read_struct(&png_, &info_, nullptr); }
  PngFile(const PngFile&) = delete;
  PngFile& operator=(const PngFile&) = delete;
  PngFile(PngFile&&) = delete;
  PngFile& operator=(PngFile&&) = delete;

  /// Runs `step` under libpng's jump; throws FileError where it jumped.
  void guarded(void (*step)(PngFile&)) {
    if (!run(step)) {
      if (ends_too_soon_) {
        refuse(file_.path(), Refusal::ends_too_soon);
      }
      refuse_damaged(file_.path(), message_.data());
    }
  }

  [[nodiscard]] png_structp png() const { return png_; }
  [[nodiscard]] png_infop info() const { return info_; }
  [[nodiscard]] const InputFile& file() const { return file_; }

  static void read_header(PngFile& self) {
    png_set_read_fn(self.png_, &self, on_read);
    png_set_user_limits(self.png_, largest_side_px, largest_side_px);
    png_set_chunk_malloc_max(self.png_, largest_chunk_bytes);
    png_set_chunk_cache_max(self.png_, most_chunks);
    png_read_info(self.png_, self.info_);
  }

  static void start_rows(PngFile& self) {
    if (png_get_bit_depth(self.png_, self.info_) == 16 &&
        std::endian::native == std::endian::little) {
      png_set_swap(self.png_);
    }
    png_set_interlace_handling(self.png_);
    png_read_update_info(self.png_, self.info_);
  }

  static void read_one_row(PngFile& self) { png_read_row(self.png_, self.row_target_, nullptr); }

  static void read_all_rows(PngFile& self) { png_read_image(self.png_, self.row_targets_); }

  /// Where the next guarded read puts its row, or all rows.
  void set_row_target(png_bytep target) { row_target_ = target; }
  void set_row_targets(png_bytepp targets) { row_targets_ = targets; }

 private:
  bool run(void (*step)(PngFile&)) {
    // libpng knows no other way to report an error than to jump.
    if (setjmp(png_jmpbuf(png_)) != 0) {  // NOLINT(cert-err52-cpp)
      return false;
    }
    step(*this);
    return true;
  }

  [[noreturn]] static void on_error(png_structp png, png_const_charp message) {
    auto* self = static_cast<PngFile*>(png_get_error_ptr(png));
    // A message cut short is still a message.
    (void)std::snprintf(self->message_.data(), self->message_.size(), "%s", message);
    png_longjmp(png, 1);
  }

  static void on_warning(png_structp /*png*/, png_const_charp /*message*/) {}

  static void on_read(png_structp png, png_bytep bytes, png_size_t count) {
    auto* self = static_cast<PngFile*>(png_get_io_ptr(png));
    if (!self->fetch(bytes, count)) {
      self->ends_too_soon_ = true;
      png_longjmp(png, 1);
    }
  }

  /// Reads through a small buffer; never throws (a throw through libpng would leak).
  bool fetch(png_bytep bytes, std::size_t count) noexcept {
    while (count > 0) {
      if (buffer_used_ == buffer_filled_) {
        buffer_used_ = 0;
        try {
          buffer_filled_ = file_.read_some(position_, buffer_.data(), buffer_.size());
        } catch (...) {
          buffer_filled_ = 0;
        }
        position_ += buffer_filled_;
        if (buffer_filled_ == 0) {
          return false;
        }
      }
      const std::size_t part = std::min(count, buffer_filled_ - buffer_used_);
      std::memcpy(bytes, buffer_.data() + buffer_used_, part);
      buffer_used_ += part;
      bytes += part;
      count -= part;
    }
    return true;
  }

  InputFile file_;
  png_structp png_ = nullptr;
  png_infop info_ = nullptr;
  png_bytep row_target_ = nullptr;
  png_bytepp row_targets_ = nullptr;
  std::array<char, 256> message_{};
  bool ends_too_soon_ = false;
  std::array<std::uint8_t, 65536> buffer_{};
  std::size_t buffer_used_ = 0;
  std::size_t buffer_filled_ = 0;
  std::uint64_t position_ = 0;
};

/// True where an animation control chunk stands before the picture's data.
bool has_animation_chunk(const InputFile& file) {
  constexpr int most_chunks_before_data = 1000;
  std::uint64_t offset = 8;
  for (int i = 0; i < most_chunks_before_data; ++i) {
    std::array<std::uint8_t, 8> head{};
    if (file.read_some(offset, head.data(), head.size()) != head.size() ||
        std::memcmp(head.data() + 4, "IDAT", 4) == 0) {
      return false;
    }
    if (std::memcmp(head.data() + 4, "acTL", 4) == 0) {
      return true;
    }
    offset += 12 + static_cast<std::uint64_t>(png_get_uint_32(head.data()));
  }
  return false;
}

class PngRows final : public RowReader {
 public:
  explicit PngRows(const std::string& path) : png_(path) {
    png_.guarded(PngFile::read_header);
    png_.guarded(PngFile::start_rows);
    // Known only once the header was read.
    // NOLINTNEXTLINE(cppcoreguidelines-prefer-member-initializer)
    row_bytes_ = png_get_rowbytes(png_.png(), png_.info());
    if (png_get_interlace_type(png_.png(), png_.info()) != PNG_INTERLACE_NONE) {
      read_whole();
    } else {
      rows_.resize(row_bytes_);
    }
  }

  const void* next_row() override {
    if (whole_) {
      return rows_.data() + next_++ * row_bytes_;
    }
    png_.set_row_target(rows_.data());
    png_.guarded(PngFile::read_one_row);
    return rows_.data();
  }

 private:
  void read_whole() {
    const std::size_t height = png_get_image_height(png_.png(), png_.info());
    rows_.resize(row_bytes_ * height);
    std::vector<png_bytep> targets(height);
    for (std::size_t y = 0; y < height; ++y) {
      targets[y] = rows_.data() + y * row_bytes_;
    }
    png_.set_row_targets(targets.data());
    png_.guarded(PngFile::read_all_rows);
    whole_ = true;
  }

  PngFile png_;
  std::size_t row_bytes_ = 0;
  std::vector<std::uint8_t> rows_;
  bool whole_ = false;
  std::size_t next_ = 0;
};

void read_tone_chunks(PngHeader& header, png_structp png, png_infop info) {
  int intent = 0;
  header.says_srgb = png_get_sRGB(png, info, &intent) != 0;
  double gamma = 0.0;
  if (png_get_gAMA(png, info, &gamma) != 0) {
    header.gamma = gamma;
  }
  png_charp name = nullptr;
  png_bytep profile = nullptr;
  png_uint_32 bytes = 0;
  int compression = 0;
  if (png_get_iCCP(png, info, &name, &compression, &profile, &bytes) != 0) {
    header.profile.assign(profile, profile + bytes);
  }
}

}  // namespace

PngHeader read_png_header(const std::string& path) {
  PngFile png(path);
  png.guarded(PngFile::read_header);
  PngHeader header;
  header.file_bytes = png.file().size();
  header.width = png_get_image_width(png.png(), png.info());
  header.height = png_get_image_height(png.png(), png.info());
  header.bits = png_get_bit_depth(png.png(), png.info());
  header.samples = png_get_channels(png.png(), png.info());
  header.palette = png_get_color_type(png.png(), png.info()) == PNG_COLOR_TYPE_PALETTE;
  header.interlaced = png_get_interlace_type(png.png(), png.info()) != PNG_INTERLACE_NONE;
  header.animated = has_animation_chunk(png.file());
  read_tone_chunks(header, png.png(), png.info());
  int unit = PNG_RESOLUTION_UNKNOWN;
  png_uint_32 x = 0;
  png_uint_32 y = 0;
  if (png_get_pHYs(png.png(), png.info(), &x, &y, &unit) != 0 && unit == PNG_RESOLUTION_METER) {
    header.x_per_m = x;
    header.y_per_m = y;
  }
  return header;
}

std::unique_ptr<RowReader> open_png_rows(const std::string& path) {
  return std::make_unique<PngRows>(path);
}

}  // namespace fogline
