// The light a strip of film got: frames through their gates, the factory's edge print, the fogged
// leader. Exposures add, so an overlap is denser by itself.
#pragma once

#include "simulator/edge_print.h"
#include "simulator/scenario.h"

#include <vector>

namespace filmsim {

/// What put light on a point of film; several may be set.
enum Exposed : unsigned char {
  kUnexposed = 0,
  kInFrame = 1,
  kInPrint = 2,
  kInLeader = 4,
  kMarked = 8
};

class StripExposure {
 public:
  /// Only frames that reach between `from_u_mm` and `to_u_mm` are painted: the rest isn't looked
  /// at.
  StripExposure(const StripPlan& plan, double pixels_per_mm, double from_u_mm, double to_u_mm);

  struct Light {
    float exposure;      ///< in units of the speed point's exposure
    unsigned char what;  ///< Exposed flags
  };
  [[nodiscard]] Light at(Point film_mm) const;

 private:
  struct Gate {
    FramePlan plan;
    double middle_v_mm;
    Plane exposure;
  };
  [[nodiscard]] float through_gate(const Gate& gate, Point film_mm) const;

  const StripPlan* plan_;
  double pixel_mm_;
  double scene_pixels_per_mm_;
  std::vector<Gate> gates_;
  EdgePrint print_;
  float print_exposure_;
};

}  // namespace filmsim
