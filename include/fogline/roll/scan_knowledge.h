#pragma once

#include <fogline/density/device_knowledge.h>
#include <fogline/film/film_knowledge.h>
#include <fogline/marks/mark_knowledge.h>
#include <fogline/tint/tint_knowledge.h>

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
