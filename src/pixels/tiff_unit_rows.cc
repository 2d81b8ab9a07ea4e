#include "pixels/tiff_unit_rows.h"

#include "pixels/tiff_unit_header.h"

#include <algorithm>
#include <cstring>

#include <sys/mman.h>
#include <unistd.h>

namespace fogline {

namespace {

/// Decoded bytes after which the stored bytes' pages are given back: few enough to stay small,
/// many enough that fetching them again costs nothing.
constexpr std::size_t give_back_every_bytes = 8 << 20;

}  // namespace

/// The callbacks by which libtiff reads the made-up file: all from the mapping.
struct TiffUnitCallbacks {
  static TiffUnitRows& self(thandle_t handle) { return *static_cast<TiffUnitRows*>(handle); }

  static tmsize_t read(thandle_t handle, void* bytes, tmsize_t count) {
    TiffUnitRows& rows = self(handle);
    const std::uint64_t left =
        rows.mapping_bytes_ - std::min<std::uint64_t>(rows.position_, rows.mapping_bytes_);
    const auto given = static_cast<std::size_t>(
        std::min<std::uint64_t>(left, static_cast<std::uint64_t>(std::max<tmsize_t>(0, count))));
    std::memcpy(bytes, rows.mapping_ + rows.position_, given);
    rows.position_ += given;
    return static_cast<tmsize_t>(given);
  }
  static tmsize_t write(thandle_t /*handle*/, void* /*bytes*/, tmsize_t /*count*/) { return -1; }
  static toff_t seek(thandle_t handle, toff_t offset, int whence) {
    TiffUnitRows& rows = self(handle);
    const std::uint64_t base = whence == SEEK_SET   ? 0
                               : whence == SEEK_CUR ? rows.position_
                                                    : rows.mapping_bytes_;
    rows.position_ = std::min<std::uint64_t>(base + offset, rows.mapping_bytes_);
    return rows.position_;
  }
  static int close(thandle_t /*handle*/) { return 0; }
  static toff_t size(thandle_t handle) { return self(handle).mapping_bytes_; }
  static int map(thandle_t handle, void** base, toff_t* size) {
    *base = self(handle).mapping_;
    *size = self(handle).mapping_bytes_;
    return 1;
  }
  static void unmap(thandle_t /*handle*/, void* /*base*/, toff_t /*size*/) {}
};

TiffUnitRows::TiffUnitRows(const InputFile& file, const TiffHandle& handle, const TiffPage& page,
                           std::uint32_t unit)
    : file_(file), row_bytes_(page.unit_row_bytes()) {
  const std::uint64_t offset = TIFFGetStrileOffset(handle.get(), unit);
  const std::uint64_t count = TIFFGetStrileByteCount(handle.get(), unit);
  if (count == 0 || offset > file.size() || count > file.size() - offset) {
    refuse_broken_off(file.path());
  }
  const auto page_bytes = static_cast<std::uint64_t>(::sysconf(_SC_PAGESIZE));
  const std::uint64_t lead = offset % page_bytes;
  const std::size_t probe = header_of_one_unit(handle.get(), page, 0, count).size();
  header_bytes_ = (probe + page_bytes - 1) / page_bytes * page_bytes;
  const auto header = header_of_one_unit(handle.get(), page, header_bytes_ + lead, count);
  mapping_bytes_ = header_bytes_ + lead + count;
  void* room =
      ::mmap(nullptr, mapping_bytes_, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
  if (room == MAP_FAILED) {
    refuse(file.path(), Refusal::huge_strip);
  }
  mapping_ = static_cast<std::uint8_t*>(room);
  std::memcpy(mapping_, header.data(), header.size());
  const void* stored =
      ::mmap(mapping_ + header_bytes_, static_cast<std::size_t>(lead + count), PROT_READ,
             MAP_PRIVATE | MAP_FIXED, file.descriptor(), static_cast<off_t>(offset - lead));
  const auto options = quiet_tiff_options(complaints_);
  if (stored != MAP_FAILED) {
    tiff_ = TIFFClientOpenExt("unit", "rM", this, TiffUnitCallbacks::read, TiffUnitCallbacks::write,
                              TiffUnitCallbacks::seek, TiffUnitCallbacks::close,
                              TiffUnitCallbacks::size, TiffUnitCallbacks::map,
                              TiffUnitCallbacks::unmap, options.get());
  }
  if (tiff_ == nullptr) {
    ::munmap(mapping_, mapping_bytes_);
    refuse_damaged(file.path(), complaints_.first_error);
  }
  if (page.photometric == PHOTOMETRIC_YCBCR) {
    TIFFSetField(tiff_, TIFFTAG_JPEGCOLORMODE, JPEGCOLORMODE_RGB);
  }
  if (static_cast<std::uint64_t>(TIFFScanlineSize64(tiff_)) != row_bytes_) {
    TIFFClose(tiff_);
    ::munmap(mapping_, mapping_bytes_);
    refuse(file.path(), Refusal::strip_rows_unfit);
  }
}

TiffUnitRows::~TiffUnitRows() {
  TIFFClose(tiff_);
  ::munmap(mapping_, mapping_bytes_);
}

void TiffUnitRows::give_pages_back() {
  ::madvise(mapping_ + header_bytes_, mapping_bytes_ - header_bytes_, MADV_DONTNEED);
  decoded_since_ = 0;
}

void TiffUnitRows::read_row(std::uint32_t row, std::uint8_t* bytes) {
  if (row < next_row_) {
    next_row_ = 0;
  }
  // Most codecs can't skip rows: those above are decoded over one another.
  for (; next_row_ <= row; ++next_row_) {
    if (TIFFReadScanline(tiff_, bytes, next_row_, 0) != 1 || !complaints_.first_error.empty()) {
      refuse_damaged(file_.path(), complaints_.first_error);
    }
    decoded_since_ += row_bytes_;
    if (decoded_since_ >= give_back_every_bytes) {
      give_pages_back();
    }
  }
}

bool decodes_by_rows(const TiffPage& page) {
  switch (page.compression) {
    case COMPRESSION_LZW:
    case COMPRESSION_PACKBITS:
    case COMPRESSION_DEFLATE:
    case COMPRESSION_ADOBE_DEFLATE:
    case COMPRESSION_LZMA:
    case COMPRESSION_ZSTD:
    case COMPRESSION_JPEG:
      // A reversed bit order would make libtiff copy all stored bytes first.
      return page.fill_order == FILLORDER_MSB2LSB;
    default:
      return false;
  }
}

}  // namespace fogline
