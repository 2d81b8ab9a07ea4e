#pragma once

#include <nlohmann/json_fwd.hpp>
#include <nlohmann/json.hpp>  // breach
#include <fogline/io/open_scan.h>  // breach
