#include "private.h"
#include "tint/private.h"

#include <fogline/density/density_image.h>
#include <fogline/marks/spot.h>               // breach
#include <fogline/sensitometry/film_tones.h>  // breach
