#pragma once

#include "pixels/scan_file.h"
#include "pixels/tiff_handle.h"
#include "pixels/tiff_page.h"

#include <optional>

namespace fogline {

/// Decides how the codes of a TIFF become light: its ICC profile, else its TransferFunction (tag
/// 301), else its GrayResponseCurve (tag 291, with a caution), else a linear raw page by nature,
/// else assumed. `picture.info` must be filled.
void decide_tiff_transfer(OpenedPicture& picture, const TiffHandle& handle, const TiffPage& page);

}  // namespace fogline
