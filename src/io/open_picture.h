#pragma once

#include "io/input_file.h"
#include "io/scan_file.h"

#include <string>

namespace fogline {

/// One opener a format; each fills everything but the user's own options. Throws FileError.
OpenedPicture open_tiff(const std::string& path);
OpenedPicture open_png(const std::string& path);
OpenedPicture open_jpeg(const std::string& path);

}  // namespace fogline
