// Dirt and damage on the film, each with a shape that is known exactly.
#pragma once

#include "simulator/geometry.h"

#include <cstdint>

namespace filmsim {

enum class MarkKind { kDust, kFibre, kDryingMark, kAirBell, kScratch, kPinhole, kSurge };
inline constexpr int kMarkKinds = 6;  // surge is drawn by development (surge.h), not as a mark

const char* mark_kind_name(MarkKind kind);

struct MarkPlan {
  MarkKind kind = MarkKind::kDust;
  Point middle_mm;         ///< film coordinates
  double size_mm = 0.3;    ///< diameter, or length of fibres and scratches
  double width_mm = 0.02;  ///< of a fibre, a scratch, a drying mark's rim
  double angle_deg = 0.0;  ///< of a fibre, or of a drying mark's longer axis
  /// Density added (dust, fibre, drying mark's rim, scratch: negative where emulsion is gone), or
  /// share of the net silver missing (air bell, pinhole).
  double strength = 1.0;
  std::uint64_t seed = 1;  ///< of the outline
};

/// True where `strength` is a share of the silver that is there.
bool removes_silver(MarkKind kind);

/// Half of the square about its middle outside which a mark is nothing, mm.
double mark_reach_mm(const MarkPlan& mark);

/// The largest mark_share() that pixels of that size see: below 1 for marks finer than a pixel.
double mark_peak_share(const MarkPlan& mark, double pixel_mm);

/// How much of the mark lies at an offset (mm) from its middle, averaged over a pixel of that
/// size; 1 in its core, negative where a drying mark is thinner inside its rim.
float mark_share(const MarkPlan& mark, double du, double dv, double pixel_mm);

}  // namespace filmsim
