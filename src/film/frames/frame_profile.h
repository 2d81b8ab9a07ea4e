#pragma once

#include <vector>

#include <opencv2/core.hpp>

namespace fogline {

/// A strip on the logarithm of light with the lamp's slow course taken out: excess over clear film.
/// Rows run along the film. Not-a-number where there is nothing to read.
struct ExcessImage {
  cv::Mat1f excess;
  double pixels_per_mm = 10.0;
  double along_begin_mm = 0.0;
  double across_begin_mm = 0.0;

  [[nodiscard]] int column(double along_mm) const;
  [[nodiscard]] int row(double across_mm) const;
  [[nodiscard]] double along_mm(int column) const {
    return along_begin_mm + (column + 0.5) / pixels_per_mm;
  }
};

/// Evidence for frames, one value a column of the strip.
struct FrameProfile {
  /// Log likelihood ratio of a column that is as clear as a gap: one picture column in ten is
  /// (night scenes).
  static constexpr double clear_ratio = -2.2;

  double pixels_per_mm = 10.0;
  double along_begin_mm = 0.0;
  /// Log likelihood ratio of picture against clear film (Neyman & Pearson), natural log.
  std::vector<double> picture;
  /// Share of the frame's height at which a border rises here (clear before, picture after).
  std::vector<double> rises;
  /// Share at which it falls (picture before, clear after).
  std::vector<double> falls;
  /// Mean step of log light over the height, positive where picture begins: where exactly a border
  /// lies. Single pieces count at most `greatest_step` so that one lamp doesn't draw it.
  std::vector<double> step;
  /// Columns that hold film at all.
  std::vector<bool> film;
};

/// Reads the evidence from the rows between two across positions (the frame's height less a
/// margin). `noise` is the spread of clear film at the strip's resolution.
FrameProfile frame_profile(const ExcessImage& image, double across_begin_mm, double across_end_mm,
                           double noise);

}  // namespace fogline
