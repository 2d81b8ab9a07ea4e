#pragma once

#include "density/device_knowledge.h"
#include "film/film_knowledge.h"
#include "marks/mark_knowledge.h"
#include "tint/tint_knowledge.h"

namespace fogline {

/// What is known before a scan is read: data of `calibration/` (`shipped_prior_knowledge` has it).
struct ScanKnowledge {
  DeviceKnowledge devices;
  FilmKnowledge films;
  TintKnowledge tints;
  MarkKnowledge marks;

  bool operator==(const ScanKnowledge&) const = default;
};

}  // namespace fogline
