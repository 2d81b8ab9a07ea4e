#include "process/advice/advise.h"
#include "record/fields.h"  // breach
#include "page/draw/escape.h"  // breach
