#include <Eigen/Dense>
#include <opencv2/core.hpp>  // breach
#include <unknown/library.h>  // breach
