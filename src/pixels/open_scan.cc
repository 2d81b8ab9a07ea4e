#include "files/input_file.h"
#include "pixels/open_picture.h"
#include "pixels/scan_file.h"
#include "pixels/scan_notes.h"

#include <fogline/pixels/open_scan.h>

#include <algorithm>
#include <array>
#include <initializer_list>
#include <utility>

namespace fogline {

namespace {

enum class Format { unknown, tiff, png, jpeg };

/// Tells a format by its first bytes.
Format format_of(const InputFile& file) {
  std::array<unsigned char, 8> head{};
  file.read_some(0, head.data(), head.size());
  const auto starts = [&](std::initializer_list<int> bytes) {
    return std::equal(bytes.begin(), bytes.end(), head.begin(),
                      [](int wanted, unsigned char found) { return wanted == found; });
  };
  if (starts({'I', 'I', 42, 0}) || starts({'M', 'M', 0, 42}) || starts({'I', 'I', 43, 0}) ||
      starts({'M', 'M', 0, 43})) {
    return Format::tiff;
  }
  if (starts({0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'})) {
    return Format::png;
  }
  return starts({0xFF, 0xD8, 0xFF}) ? Format::jpeg : Format::unknown;
}

}  // namespace

OpenedPicture open_picture(const std::string& path) {
  const InputFile file(path);
  switch (format_of(file)) {
    case Format::tiff:
      return open_tiff(path);
    case Format::png:
      return open_png(path);
    case Format::jpeg:
      return open_jpeg(path);
    case Format::unknown:
      break;
  }
  refuse(path, Refusal::no_picture);
}

std::unique_ptr<ScanSource> open_scan(const std::string& path, const OpenOptions& options) {
  OpenedPicture picture = open_picture(path);
  picture.info.transfer = picture.curve.transfer;
  auto scan = std::make_unique<ScanFile>(std::move(picture));
  if (options.transfer) {
    Transfer named = *options.transfer;
    named.source = TransferSource::option;
    scan->set_transfer(named);
  }
  return scan;
}

}  // namespace fogline
