#include "film/wedges/find_wedges.h"

#include "film/wedges/wedge_areas.h"
#include "film/wedges/wedge_patches.h"

#include <algorithm>

namespace fogline {

namespace {

/// Pixels of the picture that wedges are looked for in: forty steps are then over twenty wide.
constexpr std::int64_t finding_pixels = 900'000;
/// With one step fewer than a wedge has a row may grow to one.
constexpr std::size_t fewest_patches = fewest_wedge_steps - 1;

}  // namespace

WedgeSearch find_wedges(const ScanGrid& grid) {
  const FindingImage image = finding_image(grid, finding_pixels, FindingLight::visual);
  const cv::Mat1f smooth = smoothed(image);
  const cv::Mat1f uneven = unevenness(smooth);
  WedgeSearch search;
  const std::vector<EvenPatch> patches = even_patches(smooth, uneven);
  for (const PatchChain& chain : patch_chains(patches, fewest_patches)) {
    const WedgeRow row = lay_row(chain, smooth);
    if (static_cast<int>(row.places.size()) < fewest_wedge_steps) {
      continue;
    }
    FoundWedge wedge;
    wedge.steps = read_steps(grid, row, image.scan_px);
    wedge.touching = row.touching;
    wedge.unseen_dark_steps = row.unseen_dark_steps;
    add_bare_light(wedge, grid, row, smooth, uneven, image.scan_px);
    search.wedges.push_back(std::move(wedge));
  }
  std::stable_sort(
      search.wedges.begin(), search.wedges.end(),
      [](const FoundWedge& a, const FoundWedge& b) { return a.steps.size() > b.steps.size(); });
  return search;
}

}  // namespace fogline
