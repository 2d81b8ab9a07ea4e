#include <fogline/density/density_image.h>
#include <fogline/sensitometry/base_fog.h>  // breach
#include <fogline/marks/spot.h>  // breach
#include "tint/private.h"
#include "private.h"
