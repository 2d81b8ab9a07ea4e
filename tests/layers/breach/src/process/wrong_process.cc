#include <fogline/roll/roll_measurement.h>
#include "words/sentences.h"  // breach
#include "record/fields.h"  // breach
