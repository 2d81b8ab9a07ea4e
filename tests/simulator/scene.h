// What the camera saw: invented pictures in log luminance.
#pragma once

#include "simulator/plane.h"

#include <cstdint>
#include <vector>

namespace filmsim {

enum class SceneKind {
  kLandscape,
  kStreet,
  kPortrait,
  kNight,
  kSnow,
  kInterior,
  kTexture,
  kEvenWall,
  kPrintedWedge
};
inline constexpr int kSceneKinds = 7;  // the even wall and the wedge are not drawn at random

const char* scene_kind_name(SceneKind kind);

struct SceneSettings {
  SceneKind kind = SceneKind::kLandscape;
  std::uint64_t seed = 1;
  /// log10 of brightest over darkest spot before flare; Jones & Condit found 2.2, sd 0.28.
  double log_range = 2.2;
  /// Light that the taking lens spreads evenly, as a share of the mean luminance.
  double flare = 0.02;
  /// Loss of light at the picture's corner, log10; lens falloff, 0 to 0.25.
  double falloff = 0.05;
  bool turned = false;       ///< camera held upright
  bool upside_down = false;  ///< the film was put on the glass the other way round
  /// Large parts of the lower border without any light (clear film at the frame's edge).
  bool black_border = false;
  /// A wedge laid on the film and exposed through: densities of its steps, left to right or top to
  /// bottom. Luminance is then relative to the light without it.
  std::vector<double> wedge_densities;
  bool wedge_downwards = false;
};

/// log10 luminance relative to the frame's mean luminance, width x height pixels; of a printed
/// wedge relative to the light without it.
Plane scene_log_luminance(const SceneSettings& settings, int width_px, int height_px);

}  // namespace filmsim
