#include "pixels/jpeg_reader.h"
#include "pixels/limits.h"
#include "pixels/open_picture.h"
#include "pixels/row_source.h"
#include "pixels/scan_notes.h"

#include <memory>
#include <string>

namespace fogline {

namespace {

/// Below this (px/mm, about 100 px/inch) the resolution in a camera's file is a filler: cameras
/// write 72 px/inch whatever they saw.
constexpr double least_camera_per_mm = 4.0;

void read_resolution(ScanInfo& info, const JpegHeader& header) {
  const bool by_marker = header.x_per_mm && header.y_per_mm;
  const auto x = by_marker ? header.x_per_mm : header.exif.x_per_mm;
  const auto y = by_marker ? header.y_per_mm : header.exif.y_per_mm;
  const bool filler = info.camera && x && *x < least_camera_per_mm;
  if (x && y && !filler) {
    note_resolution(info, *x, *y);
  }
}

}  // namespace

OpenedPicture open_jpeg(const std::string& path) {
  const JpegHeader header = read_jpeg_header(path);
  if (header.components != 1 && header.components != 3) {
    refuse(path, Refusal::inks);
  }
  check_picture_size(path, header.width, header.height);
  const std::uint64_t decoded = static_cast<std::uint64_t>(header.width) * header.height *
                                static_cast<std::uint64_t>(header.components);
  check_decoded_size(path, decoded, header.file_bytes, largest_compression_ratio);
  OpenedPicture picture;
  ScanInfo& info = picture.info;
  info.file = path;
  info.width_px = static_cast<int>(header.width);
  info.height_px = static_cast<int>(header.height);
  info.bits = 8;
  info.samples_per_pixel = header.components;
  info.channels = header.components;
  info.lossy = true;
  info.camera = header.exif.exposure_recorded;
  read_resolution(info, header);
  const bool profiled = !header.profile.empty() &&
                        take_profile(picture, header.profile.data(), header.profile.size());
  if (!profiled) {
    assume_transfer(picture, false);
  }
  const RowShape shape{info.width_px, info.height_px, SampleType::u8, info.channels, info.channels};
  picture.blocks = std::make_unique<RowSource>(shape, [path] { return open_jpeg_rows(path); });
  return picture;
}

}  // namespace fogline
