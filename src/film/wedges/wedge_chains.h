#pragma once

#include "film/wedges/wedge_patches.h"

#include <vector>

namespace fogline {

/// Patches in a row, lightest first.
struct PatchChain {
  std::vector<EvenPatch> patches;
  /// The row runs along y rather than x.
  bool vertical = false;
};

/// Rows of at least `fewest` patches of one size across the row whose level rises from one to the
/// next, along either axis and turned by up to five degrees; longest first, no patch in two rows.
std::vector<PatchChain> patch_chains(const std::vector<EvenPatch>& patches, std::size_t fewest);

}  // namespace fogline
