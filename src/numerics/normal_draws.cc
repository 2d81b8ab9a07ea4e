#include "numerics/normal_draws.h"

#include "numerics/row_major.h"

#include <cmath>
#include <numbers>

#include <Eigen/Cholesky>
#include <Eigen/Dense>

namespace fogline {

double SeededNormals::even() {
  state_ += 0x9e3779b97f4a7c15U;
  std::uint64_t mixed = state_;
  mixed = (mixed ^ (mixed >> 30U)) * 0xbf58476d1ce4e5b9U;
  mixed = (mixed ^ (mixed >> 27U)) * 0x94d049bb133111ebU;
  mixed ^= mixed >> 31U;
  constexpr double bits_53 = 9007199254740992.0;
  return (static_cast<double>(mixed >> 11U) + 0.5) / bits_53;
}

double SeededNormals::next() {
  if (keeps_) {
    keeps_ = false;
    return kept_;
  }
  const double radius = std::sqrt(-2.0 * std::log(even()));
  const double angle = 2.0 * std::numbers::pi * even();
  kept_ = radius * std::sin(angle);
  keeps_ = true;
  return radius * std::cos(angle);
}

std::vector<double> SeededNormals::next(std::size_t count) {
  std::vector<double> drawn(count);
  for (double& value : drawn) {
    value = next();
  }
  return drawn;
}

NormalDraws::NormalDraws(std::vector<double> mean, std::span<const double> covariance)
    : mean_(std::move(mean)) {
  const auto size = static_cast<Eigen::Index>(mean_.size());
  const RowMajor root =
      Eigen::LLT<Eigen::MatrixXd>(Eigen::Map<const RowMajor>(covariance.data(), size, size))
          .matrixL();
  root_.assign(root.data(), root.data() + root.size());
}

std::vector<double> NormalDraws::draw(SeededNormals& random) const {
  const auto size = static_cast<Eigen::Index>(mean_.size());
  const std::vector<double> normals = random.next(mean_.size());
  const Eigen::VectorXd drawn = Eigen::Map<const Eigen::VectorXd>(mean_.data(), size) +
                                Eigen::Map<const RowMajor>(root_.data(), size, size) *
                                    Eigen::Map<const Eigen::VectorXd>(normals.data(), size);
  return {drawn.data(), drawn.data() + size};
}

}  // namespace fogline
