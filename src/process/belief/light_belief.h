#pragma once

#include "process/belief/light_signs.h"

#include <fogline/process/light_and_development.h>

#include <vector>

namespace fogline {

/// One point of belief: all rolls of one contrast and one placing of the metered tone.
struct BeliefPoint {
  double contrast_index = 0.0;
  /// Exposure error given the placing, stops: normally distributed.
  double exposure_mean_stops = 0.0;
  double weight = 0.0;
};

/// Belief about a roll's exposure and contrast after looking. Weights sum to 1; no points where no
/// roll of the population reads like this one.
struct LightBelief {
  std::vector<BeliefPoint> points;
  /// Standard deviation of the exposure error at every point, stops.
  double exposure_sd_stops = 1.0;
};

/// Weighs every combination of
///   - contrast (log-normal about the aim),
///   - where the roll's metered tone fell: exposure error, weather and habit together,
///   - the range of its subjects,
///   - the scanner's scale (angle of light, tone curve) and the toe of the film's curve
/// by how well the curve then gives the shadow, highlight, edge print and leader that were read, on
/// a grid (quadrature, no sampling). Shadow and highlight are medians over frames; a median passes
/// any rising curve, so that the medians' log exposures are what varies normally. What isn't an
/// exposure error in the placing can't be told from it: the error given the placing is normal in
/// closed form. A shadow near clear film is held against the bent toe with its reading noise, so
/// that it only says "at most".
///
/// `frames` stands for the number of frames that the medians are over. Needs shadow and highlight.
LightBelief believe(const LightSigns& signs, int frames, const ReadingScale& scale, const Aim& aim,
                    const RollPopulation& population);

}  // namespace fogline
