#include "pixels/jpeg_reader.h"

#include <algorithm>
#include <array>
#include <csetjmp>
#include <cstdio>
#include <cstdlib>
#include <cstring>

// jpeglib.h needs the types of <cstdio> before it.
#include "files/input_file.h"

#include <jerror.h>
#include <jpeglib.h>

namespace fogline {

namespace {

/// Memory libjpeg may take for one picture. A progressive file is held whole as coefficients, two
/// bytes a sample: 24 Mpx with halved colour take 72 MB.
constexpr long largest_memory_bytes = 80L << 20;

/// Scans of a progressive file; encoders write about ten. Each scan costs a pass over the picture,
/// however few bytes it has.
constexpr int most_scans = 100;

constexpr double mm_per_inch = 25.4;
constexpr double mm_per_cm = 10.0;

/// A JPEG being read by libjpeg. As with PNG: errors are jumps, so every call goes through
/// `guarded`, whose callees leave nothing behind undestroyed.
class JpegFile {
 public:
  explicit JpegFile(const std::string& path) : file_(path) {
    decoder_.err = jpeg_std_error(&errors_);
    errors_.error_exit = on_error;
    errors_.emit_message = on_message;
    decoder_.client_data = this;
    guarded(create);
  }
  ~JpegFile() { jpeg_destroy_decompress(&decoder_); }
  JpegFile(const JpegFile&) = delete;
  JpegFile& operator=(const JpegFile&) = delete;
  JpegFile(JpegFile&&) = delete;
  JpegFile& operator=(JpegFile&&) = delete;

  void guarded(void (*step)(JpegFile&)) {
    if (!run(step)) {
      if (too_many_scans_) {
        refuse(file_.path(), Refusal::too_many_scans);
      }
      refuse_damaged(file_.path(), message_.data());
    }
  }

  [[nodiscard]] jpeg_decompress_struct& decoder() { return decoder_; }
  [[nodiscard]] const InputFile& file() const { return file_; }

  static void read_header(JpegFile& self) {
    jpeg_save_markers(&self.decoder_, JPEG_APP0 + 1, 0xFFFF);
    jpeg_save_markers(&self.decoder_, JPEG_APP0 + 2, 0xFFFF);
    jpeg_read_header(&self.decoder_, TRUE);
  }

  static void start(JpegFile& self) {
    self.decoder_.out_color_space = self.decoder_.num_components == 1 ? JCS_GRAYSCALE : JCS_RGB;
    self.decoder_.dct_method = JDCT_ISLOW;
    jpeg_start_decompress(&self.decoder_);
  }

  static void read_one_row(JpegFile& self) {
    JSAMPROW rows[1] = {self.row_target};
    jpeg_read_scanlines(&self.decoder_, rows, 1);
  }

  static void read_profile(JpegFile& self) {
    if (jpeg_read_icc_profile(&self.decoder_, &self.profile, &self.profile_bytes) == FALSE) {
      self.profile = nullptr;
      self.profile_bytes = 0;
    }
  }

  JSAMPROW row_target = nullptr;
  JOCTET* profile = nullptr;
  unsigned int profile_bytes = 0;

 private:
  static JpegFile& self_of(j_common_ptr decoder) {
    return *static_cast<JpegFile*>(decoder->client_data);
  }
  static JpegFile& self_of(j_decompress_ptr decoder) {
    return *static_cast<JpegFile*>(decoder->client_data);
  }

  bool run(void (*step)(JpegFile&)) {
    if (setjmp(jump_) != 0) {
      return false;
    }
    step(*this);
    return true;
  }

  static void create(JpegFile& self) {
    jpeg_create_decompress(&self.decoder_);
    self.decoder_.client_data = &self;
    self.decoder_.mem->max_memory_to_use = largest_memory_bytes;
    self.source_.init_source = [](j_decompress_ptr) {};
    self.source_.fill_input_buffer = fill_input;
    self.source_.skip_input_data = skip_input;
    self.source_.resync_to_restart = jpeg_resync_to_restart;
    self.source_.term_source = [](j_decompress_ptr) {};
    self.source_.next_input_byte = nullptr;
    self.source_.bytes_in_buffer = 0;
    self.decoder_.src = &self.source_;
    self.progress_.progress_monitor = on_progress;
    self.decoder_.progress = &self.progress_;
  }

  [[noreturn]] static void on_error(j_common_ptr decoder) {
    JpegFile& self = self_of(decoder);
    std::array<char, JMSG_LENGTH_MAX> text{};
    decoder->err->format_message(decoder, text.data());
    std::snprintf(self.message_.data(), self.message_.size(), "%s", text.data());
    std::longjmp(self.jump_, 1);
  }

  /// libjpeg only warns of missing data and fills up with grey: here that is an error. Harmless
  /// oddities of headers and stray bytes between segments stay warnings.
  static void on_message(j_common_ptr decoder, int level) {
    if (level >= 0) {
      return;
    }
    const int code = decoder->err->msg_code;
    const bool harmless = code == JWRN_EXTRANEOUS_DATA || code == JWRN_ADOBE_XFORM ||
                          code == JWRN_JFIF_MAJOR || code == JWRN_BOGUS_ICC;
    if (!harmless) {
      on_error(decoder);
    }
  }

  static void on_progress(j_common_ptr decoder) {
    if (decoder->is_decompressor != 0) {
      JpegFile& self = self_of(decoder);
      if (self.decoder_.input_scan_number > most_scans) {
        self.too_many_scans_ = true;
        std::longjmp(self.jump_, 1);
      }
    }
  }

  static boolean fill_input(j_decompress_ptr decoder) {
    JpegFile& self = self_of(decoder);
    const std::size_t got = self.fetch();
    if (got == 0) {
      ERREXIT(decoder, JERR_INPUT_EOF);
    }
    self.source_.next_input_byte = self.buffer_.data();
    self.source_.bytes_in_buffer = got;
    return TRUE;
  }

  static void skip_input(j_decompress_ptr decoder, long count) {
    JpegFile& self = self_of(decoder);
    auto left = static_cast<std::uint64_t>(std::max(0L, count));
    const std::uint64_t buffered = std::min<std::uint64_t>(left, self.source_.bytes_in_buffer);
    self.source_.next_input_byte += buffered;
    self.source_.bytes_in_buffer -= buffered;
    left -= buffered;
    self.position_ += left;
  }

  /// Never throws: a throw through libjpeg would leak.
  std::size_t fetch() noexcept {
    try {
      const std::size_t got = file_.read_some(position_, buffer_.data(), buffer_.size());
      position_ += got;
      return got;
    } catch (...) {
      return 0;
    }
  }

  InputFile file_;
  jpeg_decompress_struct decoder_{};
  jpeg_error_mgr errors_{};
  jpeg_source_mgr source_{};
  jpeg_progress_mgr progress_{};
  std::jmp_buf jump_{};
  std::array<char, JMSG_LENGTH_MAX> message_{};
  bool too_many_scans_ = false;
  std::array<std::uint8_t, 65536> buffer_{};
  std::uint64_t position_ = 0;
};

class JpegRows final : public RowReader {
 public:
  explicit JpegRows(const std::string& path) : jpeg_(path) {
    jpeg_.guarded(JpegFile::read_header);
    jpeg_.guarded(JpegFile::start);
    row_.resize(static_cast<std::size_t>(jpeg_.decoder().output_width) *
                static_cast<std::size_t>(jpeg_.decoder().output_components));
    jpeg_.row_target = row_.data();
  }

  const void* next_row() override {
    jpeg_.guarded(JpegFile::read_one_row);
    return row_.data();
  }

 private:
  JpegFile jpeg_;
  std::vector<JSAMPLE> row_;
};

void read_exif_marker(JpegHeader& header, const jpeg_decompress_struct& decoder) {
  constexpr std::array<char, 6> lead{'E', 'x', 'i', 'f', 0, 0};
  for (const auto* marker = decoder.marker_list; marker != nullptr; marker = marker->next) {
    if (marker->marker == JPEG_APP0 + 1 && marker->data_length > lead.size() &&
        std::memcmp(marker->data, lead.data(), lead.size()) == 0) {
      header.exif = read_exif(marker->data + lead.size(), marker->data_length - lead.size());
      return;
    }
  }
}

}  // namespace

JpegHeader read_jpeg_header(const std::string& path) {
  JpegFile jpeg(path);
  jpeg.guarded(JpegFile::read_header);
  const jpeg_decompress_struct& decoder = jpeg.decoder();
  JpegHeader header;
  header.file_bytes = jpeg.file().size();
  header.width = decoder.image_width;
  header.height = decoder.image_height;
  header.components = decoder.num_components;
  if (decoder.saw_JFIF_marker != 0 && decoder.density_unit != 0) {
    const double unit_mm = decoder.density_unit == 1 ? mm_per_inch : mm_per_cm;
    header.x_per_mm = decoder.X_density / unit_mm;
    header.y_per_mm = decoder.Y_density / unit_mm;
  }
  read_exif_marker(header, decoder);
  jpeg.guarded(JpegFile::read_profile);
  const std::unique_ptr<JOCTET, void (*)(void*)> profile(jpeg.profile, std::free);
  if (profile != nullptr) {
    header.profile.assign(profile.get(), profile.get() + jpeg.profile_bytes);
  }
  return header;
}

std::unique_ptr<RowReader> open_jpeg_rows(const std::string& path) {
  return std::make_unique<JpegRows>(path);
}

}  // namespace fogline
