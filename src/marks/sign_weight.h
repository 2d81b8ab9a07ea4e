#pragma once

namespace fogline {

/// What a sign adds to the log odds that something is a mark: weight * (value - even), or
/// weight * ln(value / even) where it says so.
struct SignWeight {
  double even = 0.0;
  double weight = 0.0;

  bool operator==(const SignWeight&) const = default;
};

/// What a score is worth: log odds = worth * (score - even).
struct ScoreWorth {
  double even = 0.0;
  double worth = 0.0;

  bool operator==(const ScoreWorth&) const = default;
};

/// Extents that marks of a kind have, mm.
struct MarkSize {
  double least_mm = 0.0;
  double most_mm = 0.0;

  bool operator==(const MarkSize&) const = default;
};

}  // namespace fogline
