#include "page_pictures.h"

#include "pixels/encode_picture.h"

#include <algorithm>

namespace fogline {
namespace {

// Sharp on a phone's 400 points at three dots a point and on a desk's 70 rem; about 300 kB.
constexpr int longest_side_px = 1600;
constexpr int jpeg_quality = 82;

using Picture = Raster<std::uint8_t>;

// Area average of whole blocks; a last partial block is left out. The picture is for looking at,
// so averaging codes instead of light does no harm.
Picture reduced(const Picture& picture, int factor) {
  const int width = std::max(1, picture.width() / factor);
  const int height = std::max(1, picture.height() / factor);
  Picture small(width, height, picture.channels());
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const int right = std::min((x + 1) * factor, picture.width());
      const int below = std::min((y + 1) * factor, picture.height());
      for (int c = 0; c < picture.channels(); ++c) {
        int sum = 0;
        for (int row = y * factor; row < below; ++row) {
          for (int column = x * factor; column < right; ++column) {
            sum += picture.at(column, row, c);
          }
        }
        const int count = (right - x * factor) * (below - y * factor);
        small.at(x, y, c) = static_cast<std::uint8_t>(sum / std::max(count, 1));
      }
    }
  }
  return small;
}

PagePicture page_picture(const ScanPicture& scan_picture) {
  PagePicture page;
  if (scan_picture.pixels.empty()) {
    return page;
  }
  const int longest = std::max(scan_picture.pixels.width(), scan_picture.pixels.height());
  const int factor = (longest + longest_side_px - 1) / longest_side_px;
  const Picture small = factor > 1 ? reduced(scan_picture.pixels, factor) : scan_picture.pixels;
  page.media_type = "image/jpeg";
  page.bytes = encode_jpeg(small, jpeg_quality);
  page.width = small.width();
  page.height = small.height();
  page.scan_px_per_pixel = scan_picture.scan_px_per_pixel * factor;
  return page;
}

}  // namespace

std::vector<PagePicture> page_pictures(const std::vector<ScanPicture>& pictures) {
  std::vector<PagePicture> encoded;
  for (const ScanPicture& picture : pictures) {
    encoded.push_back(page_picture(picture));
  }
  return encoded;
}

}  // namespace fogline
