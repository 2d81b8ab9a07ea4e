#pragma once

#include "tint/tint_evidence.h"
#include "tint/tint_knowledge.h"

#include <array>
#include <vector>

namespace fogline {

/// How well a veil explains the texture read, by the veil's (blue - red) density: chi squared of
/// the variance, averaged over clean film's texture and the veil's patchiness. Tabulated once.
class TextureLikelihood {
 public:
  TextureLikelihood(const TintEvidence& evidence, const std::vector<Weighted>& patchiness,
                    const std::vector<Weighted>& clean_textures);

  [[nodiscard]] double at(double blue_less_red) const;

 private:
  static constexpr int steps = 240;
  /// Above this the table holds its last value; the strongest veil's (blue - red) is below it.
  static constexpr double end_density = 0.6;
  std::array<double, steps + 1> table_{};
};

}  // namespace fogline
