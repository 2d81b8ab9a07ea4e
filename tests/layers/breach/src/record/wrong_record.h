#pragma once

#include <nlohmann/json_fwd.hpp>
#include <nlohmann/json.hpp>  // breach
#include <fogline/pixels/open_scan.h>  // breach
