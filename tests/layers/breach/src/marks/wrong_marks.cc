#include <fogline/roll/measure_roll.h>  // breach
#include "tint/private.h"  // breach
