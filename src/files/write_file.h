#pragma once

#include <string>
#include <string_view>

namespace fogline {

/// Writes a whole file: first beside its place under another name, then, once the bytes are on the
/// disk, renamed over it. So `path` holds either all of the old bytes or all of the new ones,
/// whatever stops the program. A link is followed; a device or pipe is written to as it is.
/// Throws FileError, and leaves nothing beside `path` behind.
void write_file(const std::string& path, std::string_view bytes);

}  // namespace fogline
