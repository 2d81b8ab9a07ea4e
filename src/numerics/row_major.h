#pragma once

#include <Eigen/Core>

namespace fogline {

/// How matrices lie in the vectors that callers hand in: row by row.
using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

}  // namespace fogline
