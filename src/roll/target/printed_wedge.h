#pragma once

#include "roll/reading/strip_reading.h"
#include "sensitometry/read_exposed_area.h"

#include <fogline/base/known.h>

#include <vector>

namespace fogline {

/// One step of a wedge printed on film.
struct PrintedStep {
  ExposedArea area;
  /// Index into the reference's steps (lightest first) that it was exposed through.
  int reference_index = 0;
};

/// A wedge printed on a strip of film: it may lie along the film or across it.
struct PrintedWedge {
  /// Least exposed (densest step of the wedge) first.
  std::vector<PrintedStep> steps;
  /// Nothing shows which step the most exposed one is: it is taken for the wedge's lightest.
  bool place_doubtful = false;
};

Known<PrintedWedge> find_printed_wedge(const StripReading& reading, const FilmStrip& film,
                                       const WedgeReference& reference);

}  // namespace fogline
