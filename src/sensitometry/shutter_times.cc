#include "sensitometry/shutter_times.h"

#include <cmath>
#include <initializer_list>

namespace fogline {

double true_time_s(double marked_s) {
  constexpr double near_stops = 0.12;
  const double stops = std::log2(marked_s);
  // Whole stops first: their marks are rounded furthest.
  for (const double parts : {1.0, 2.0, 3.0}) {
    const double nearest = std::round(stops * parts) / parts;
    if (std::abs(nearest - stops) < near_stops) {
      return std::exp2(nearest);
    }
  }
  return marked_s;
}

}  // namespace fogline
