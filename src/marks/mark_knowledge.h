#pragma once

#include "marks/sign_weight.h"

namespace fogline {

/// What any spot shows that is no part of the picture. Weights on logarithms: `stands_out`.
struct SpotScore {
  SignWeight stands_out;
  SignWeight stands_out_in_picture;
  SignWeight even_edge;
  /// Beyond `even` only.
  SignWeight colour;
  /// Contrast between channels that a neutral mark may show, as a share; more is no mark.
  double most_colour = 0.0;

  bool operator==(const SpotScore&) const = default;
};

/// Denser, sharp specks. Weights on logarithms: `contrast`, `sigmas`.
struct DustKnowledge {
  MarkSize size;
  double least_contrast = 0.0;
  SignWeight contrast;
  /// Breadth of the edge beyond what pixels make of it, mm.
  SignWeight edge;
  /// In pictures only.
  SignWeight beyond;
  SignWeight sigmas;
  SignWeight crowd;
  ScoreWorth worth;

  bool operator==(const DustKnowledge&) const = default;
};

/// Spots down to clear film. `gone`: share of the density round about that isn't there.
struct PinholeKnowledge {
  double most_mm = 0.0;
  SignWeight gone;
  ScoreWorth worth;

  bool operator==(const PinholeKnowledge&) const = default;
};

/// Thinner discs. Weight on a logarithm: `stands_out`.
struct BellKnowledge {
  MarkSize size;
  /// On scans too coarse for an outline of ten pixels.
  double least_coarse_mm = 0.0;
  double least_contrast = 0.0;
  SignWeight stands_out;
  SignWeight even_edge;
  /// Log odds for each unit of circularity beyond what pixels leave of a disc's.
  double round_weight = 0.0;
  double crowd_weight = 0.0;
  /// Beyond `even` only.
  SignWeight gone;
  SignWeight colour;
  ScoreWorth worth;

  bool operator==(const BellKnowledge&) const = default;
};

/// Threads. Weight on a logarithm: `length`.
struct FibreKnowledge {
  MarkSize length;
  double most_width_mm = 0.0;
  SignWeight alone;
  SignWeight length_mm;
  SignWeight spread;
  /// Beyond `even` only: `uneven`, `width_mm`, `square`.
  SignWeight uneven;
  SignWeight width_mm;
  SignWeight unbranched;
  SignWeight square;
  double crowd_weight = 0.0;
  ScoreWorth worth;

  bool operator==(const FibreKnowledge&) const = default;
};

/// Lines along the film. Weights on logarithms: `strength`, `length_mm`.
struct ScratchKnowledge {
  double least_mm = 0.0;
  /// On coarse scans, where the breadth says nothing.
  double least_coarse_mm = 0.0;
  double most_width_mm = 0.0;
  SignWeight strength;
  /// Beyond `even` only.
  SignWeight one_sided;
  SignWeight length_mm;
  double inside_weight = 0.0;
  double crossing_weight = 0.0;
  double at_border_weight = 0.0;
  double beside_weight = 0.0;
  ScoreWorth worth;

  bool operator==(const ScratchKnowledge&) const = default;
};

/// Weights of the log odds that a closed line is a drop's rim; see RingSigns for the signs.
struct RingScore {
  double constant = 0.0;
  double seen = 0.0;
  double spread = 0.0;
  double alone = 0.0;
  double log_radius = 0.0;
  double evidence = 0.0;
  double twins = 0.0;

  bool operator==(const RingScore&) const = default;
};

struct RingKnowledge {
  double least_radius_mm = 0.0;
  double most_radius_mm = 0.0;
  double rim_mm = 0.0;
  double least_rim_density = 0.0;
  double most_rim_density = 0.0;
  RingScore score;

  bool operator==(const RingKnowledge&) const = default;
};

/// What marks look like, and how surely each sign parts them from pictures. Shipped in
/// `calibration/marks.toml` with sources; a default one holds nothing.
struct MarkKnowledge {
  SpotScore spot;
  DustKnowledge dust;
  PinholeKnowledge pinhole;
  BellKnowledge bell;
  FibreKnowledge fibre;
  ScratchKnowledge scratch;
  RingKnowledge ring;
  /// Marks less sure than this aren't told.
  double told_from = 0.0;

  bool operator==(const MarkKnowledge&) const = default;
};

}  // namespace fogline
