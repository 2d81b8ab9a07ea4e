// The yardstick of speed: what libtiff alone needs to decode a file.
#pragma once

#include <string>

namespace bench {

/// Wall seconds for reading every strip or tile of a TIFF file and throwing it away.
double bare_decode_seconds(const std::string& path);

}  // namespace bench
