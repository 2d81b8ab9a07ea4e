#pragma once

#include <vector>

#include <fogline/base/fine.h>
#include <fogline/film/too_high.h>  // breach
#include <nlohmann/json_fwd.hpp>  // breach
#include "base/private.h"  // breach
