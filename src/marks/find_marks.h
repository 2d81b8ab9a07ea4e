#pragma once

#include "density/lamp.h"
#include "density/stray_light.h"
#include "film/film_layout.h"
#include "marks/mark_knowledge.h"

#include <fogline/base/scan_source.h>
#include <fogline/marks/mark.h>

#include <optional>
#include <vector>

namespace fogline {

/// A scan as marks are looked for in it: everything is known of it but the marks.
struct MarkContext {
  const ScanGrid& grid;
  const StrayLight& stray;
  /// What bare light reads along the strip, or clear film where no bare light is in sight.
  const Lamp& lamp;
  /// Visual density of clear film above the lamp; 0 where clear film is the lamp.
  double clear_density = 0.0;
  const MarkKnowledge& knowledge;
};

/// Marks of one strip, and why some couldn't be looked for.
struct MarkSearch {
  std::vector<Mark> marks;
  /// Where the scan is too coarse for some kinds.
  std::optional<WhyUnknown> limits;
};

/// Looks for marks on one strip, tile by tile at the scan grid's own fineness (48 pixels a
/// millimetre at most). `strip_number` is written into the marks. Few false alarms matter more than
/// finding all: what fits no kind well is left out.
MarkSearch find_marks(const FilmStrip& film, int strip_number, const MarkContext& context);

}  // namespace fogline
