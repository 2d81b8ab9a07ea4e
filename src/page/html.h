#pragma once

#include "words/number_text.h"

#include <fogline/record/record_json.h>

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// A scan's display picture, encoded for a page.
struct PagePicture {
  /// "image/jpeg" or "image/png".
  std::string media_type;
  std::vector<std::uint8_t> bytes;
  int width = 0;
  int height = 0;
  /// Stored pixels of the scan a picture pixel.
  double scan_px_per_pixel = 1.0;
};

struct HtmlOptions {
  DensityUnits units = DensityUnits::density;
};

/// What stands in the head of every page that fogline writes, and by which it knows its own: a page
/// without it is somebody else's and is not replaced.
inline constexpr std::string_view page_marker = R"(<meta name="generator" content="fogline )";

/// The report as one page (HTML, UTF-8) that needs no script, no network and no other file. What
/// was measured is drawn over the picture of each scan. `pictures` holds one for each scan of the
/// record, in its order; an empty one leaves the drawing out.
std::string html_from_record(const RollRecord& record, const std::vector<PagePicture>& pictures,
                             const HtmlOptions& options);

}  // namespace fogline
