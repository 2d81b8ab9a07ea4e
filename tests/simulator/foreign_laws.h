// Laws of lamp, lens, silver and software that an analyser wasn't built on. A scan that has them is
// "foreign": what is measured on it tells how far the analyser lives on what it assumes.
#pragma once

#include "simulator/finished_picture.h"
#include "simulator/foreign_callier.h"
#include "simulator/lamp_fall_off.h"
#include "simulator/lens_halo.h"
#include "simulator/mask_shade.h"

#include <optional>

namespace filmsim {

struct ForeignLaws {
  ForeignCallier callier;
  LampFallOff lamp;
  MaskShade mask;
  LensHalo halo;
  /// Light of what isn't lit from behind, share of the bare lamp: a room that isn't dark.
  double surround_light = 1e-4;
  std::optional<FinishedPicture> finish;
};

}  // namespace filmsim
