#pragma once

#include "files/input_file.h"
#include "pixels/scan_file.h"

#include <string>

namespace fogline {

/// The picture of a file, told by its content. Throws FileError.
OpenedPicture open_picture(const std::string& path);

/// One opener a format; each fills everything but the user's own options. Throws FileError.
OpenedPicture open_tiff(const std::string& path);
OpenedPicture open_png(const std::string& path);
OpenedPicture open_jpeg(const std::string& path);

}  // namespace fogline
