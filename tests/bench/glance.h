// What stands or falls at a glance: film, holes, frames, and numbers that can't be.
#pragma once

#include "simulator/render.h"

#include <fogline/roll/roll_measurement.h>

#include <string>
#include <vector>

namespace bench {

struct Glance {
  /// Every piece of film in sight has a strip that was told, boxes at an IoU of 0.5 and more, and
  /// nothing says that it isn't film.
  bool film_found = false;
  int holes_whole = 0;
  int holes_partly = 0;
  int holes_told = 0;
  /// Whole frames whose border shows, found at an IoU of 0.8 and more.
  int frames_found = 0;
  int frames_invented = 0;
  /// Base plus fog that no film has, pictures or leaders clearer than clear film.
  std::vector<std::string> impossible;
  /// Told with a confidence of 0.8 and more, and not so.
  std::vector<std::string> wrong_tints;

  [[nodiscard]] bool holes_right() const;
};

/// `roll` is null where nothing could be measured: the truth alone is filled in.
Glance glance_at(const filmsim::Simulated& simulated, const fogline::RollMeasurement* roll);

}  // namespace bench
