#pragma once

#include "page/html.h"

namespace fogline {

/// A picture for pages: what a page says of it matters, not what it shows.
inline PagePicture small_picture() {
  PagePicture picture;
  picture.media_type = "image/jpeg";
  picture.bytes = {0xFF, 0xD8, 0xFF};
  picture.width = 650;
  picture.height = 175;
  picture.scan_px_per_pixel = 2.0;
  return picture;
}

}  // namespace fogline
