#include "pixels/limits.h"
#include "pixels/open_picture.h"
#include "pixels/scan_notes.h"
#include "pixels/tiff_handle.h"
#include "pixels/tiff_page.h"
#include "pixels/tiff_source.h"
#include "pixels/tiff_transfer.h"

#include <cmath>
#include <memory>
#include <optional>

namespace fogline {

namespace {

constexpr double mm_per_inch = 25.4;
constexpr double mm_per_cm = 10.0;

void read_resolution(ScanInfo& info, TIFF* tiff) {
  float x = 0.0F;
  float y = 0.0F;
  const std::uint16_t unit = tiff_short(tiff, TIFFTAG_RESOLUTIONUNIT, RESUNIT_INCH);
  const bool has_x = TIFFGetField(tiff, TIFFTAG_XRESOLUTION, &x) == 1;
  const bool has_y = TIFFGetField(tiff, TIFFTAG_YRESOLUTION, &y) == 1;
  if (!has_x || !has_y || (unit != RESUNIT_INCH && unit != RESUNIT_CENTIMETER)) {
    return;
  }
  const double unit_mm = unit == RESUNIT_INCH ? mm_per_inch : mm_per_cm;
  note_resolution(info, static_cast<double>(x) / unit_mm, static_cast<double>(y) / unit_mm);
}

void note_layout(ScanInfo& info, const TiffPageChoice& choice) {
  const TiffPage& page = choice.page;
  if (choice.full_pages > 1) {
    add_caution(info, CautionKind::several_pages, Severity::note,
                {static_cast<double>(choice.full_pages)});
  }
  if (page.samples > page.channels()) {
    add_caution(info, CautionKind::channels_unused, Severity::note);
  }
}

/// True where the file's camera directory (EXIF) records how the picture was exposed.
bool made_by_camera(TiffHandle& handle, const TiffPage& page) {
  TIFF* tiff = handle.get();
  std::uint64_t offset = 0;
  if (TIFFGetField(tiff, TIFFTAG_EXIFIFD, &offset) != 1) {
    return false;
  }
  bool camera = false;
  if (TIFFReadEXIFDirectory(tiff, offset) == 1) {
    float value = 0.0F;
    camera = TIFFGetField(tiff, EXIFTAG_EXPOSURETIME, &value) == 1 ||
             TIFFGetField(tiff, EXIFTAG_FNUMBER, &value) == 1;
  }
  handle.go_to(page.directory_offset);
  return camera;
}

}  // namespace

OpenedPicture open_tiff(const std::string& path) {
  const InputFile file(path);
  TiffHandle handle(path);
  const TiffPageChoice choice = choose_tiff_page(handle, path);
  const TiffPage& page = choice.page;
  check_tiff_page(page, path, file.size());
  OpenedPicture picture;
  ScanInfo& info = picture.info;
  info.file = path;
  info.width_px = static_cast<int>(page.width);
  info.height_px = static_cast<int>(page.height);
  info.bits = page.bits;
  info.samples_per_pixel = page.samples;
  info.channels = page.channels();
  info.lossy = page.compression == COMPRESSION_JPEG || page.compression == COMPRESSION_WEBP;
  picture.sample_type = page.sample_type();
  picture.top_code = top_code_of(page.bits);
  note_layout(info, choice);
  info.camera = made_by_camera(handle, page);
  read_resolution(info, handle.get());
  decide_tiff_transfer(picture, handle, page);
  picture.blocks = std::make_unique<TiffSource>(path, page);
  return picture;
}

}  // namespace fogline
