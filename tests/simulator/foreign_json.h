// The foreign laws of a scan, as its truth tells them.
#pragma once

#include "simulator/foreign_laws.h"

#include <nlohmann/json.hpp>

namespace filmsim {

nlohmann::ordered_json foreign_json(const ForeignLaws& laws);

}  // namespace filmsim
