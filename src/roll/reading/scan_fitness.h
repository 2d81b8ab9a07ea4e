#pragma once

#include "film/film_layout.h"
#include "roll/reading/strip_reading.h"

#include <fogline/roll/roll_measurement.h>

#include <vector>

namespace fogline {

/// What tells how far a scan's densities can be believed.
struct FitnessEvidence {
  const ScanInfo& info;
  const FilmLayout& layout;
  const std::vector<StripReading>& readings;
  const ZeroReport& zero;
  const Known<Quantity>& veiling_glare;
  const Known<ScanCalibration>& calibration;
  const DeviceKnowledge& devices;
  const FilmKnowledge& films;
  /// Share of the whole scan at the top code.
  double clipped_pixels_share = 0.0;
  /// What was found is a step wedge, and no film to be judged.
  bool wedge_alone = false;
};

/// What a scan is fit for, and the cautions that say why and how to scan again.
struct FitnessJudgement {
  Fitness fitness = Fitness::unfit;
  DensitiesAbove densities_above = DensitiesAbove::light_path;
  std::vector<Caution> cautions;

  /// True where the scan's densities may be told.
  [[nodiscard]] bool tells_densities() const {
    return fitness != Fitness::unfit && fitness != Fitness::marks_only;
  }
};

FitnessJudgement judge_fitness(const FitnessEvidence& evidence);

}  // namespace fogline
