#include <opencv2/imgproc.hpp>
#include <Eigen/Dense>  // breach
#include <tiffio.h>  // breach
#include "../density/private.h"  // breach
