#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace fogline {

/// How a smooth function of one variable may stray from zero: its standard deviation, and the
/// length along the variable over which it keeps to its course.
struct StrayKernel {
  double amplitude = 0.0;
  double length = 1.0;
};

/// A smooth function known only by its kernel (squared-exponential; Rasmussen & Williams 2006,
/// chapter 2), seen at some points with an error of each point's own, and told at nodes.
class StrayingFunction {
 public:
  /// `error` holds the standard deviation of each point's own error, 0 and more.
  StrayingFunction(StrayKernel kernel, std::span<const double> points,
                   std::span<const double> error, std::span<const double> nodes);

  /// What function and error make together at the points is this lower triangle (row by row, whole
  /// square) times independent standard normal numbers.
  [[nodiscard]] const std::vector<double>& root() const { return root_; }

  /// The function at the nodes, given function plus error at the points: its mean, and one draw of
  /// it by as many standard normal numbers as there are nodes.
  [[nodiscard]] std::vector<double> mean_at_nodes(std::span<const double> at_points) const;
  [[nodiscard]] std::vector<double> draw_at_nodes(std::span<const double> at_points,
                                                  std::span<const double> normals) const;

 private:
  std::size_t points_;
  std::size_t nodes_;
  std::vector<double> root_;
  std::vector<double> gain_;
  std::vector<double> rest_root_;
};

}  // namespace fogline
