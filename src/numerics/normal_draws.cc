#include <fogline/numerics/normal_draws.h>

#include <Eigen/Cholesky>
#include <Eigen/Dense>

namespace fogline {

namespace {

using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

}  // namespace

std::vector<double> standard_normals(std::size_t count, std::mt19937_64& random) {
  std::normal_distribution<double> normal;
  std::vector<double> drawn(count);
  for (double& value : drawn) {
    value = normal(random);
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

std::vector<double> NormalDraws::draw(std::mt19937_64& random) const {
  const auto size = static_cast<Eigen::Index>(mean_.size());
  const std::vector<double> normals = standard_normals(mean_.size(), random);
  const Eigen::VectorXd drawn = Eigen::Map<const Eigen::VectorXd>(mean_.data(), size) +
                                Eigen::Map<const RowMajor>(root_.data(), size, size) *
                                    Eigen::Map<const Eigen::VectorXd>(normals.data(), size);
  return {drawn.data(), drawn.data() + size};
}

}  // namespace fogline
