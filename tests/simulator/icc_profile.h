// A colour profile that tells the tone curve of the codes.
#pragma once

#include "simulator/encoding.h"

#include <string>

namespace filmsim {

/// The profile's bytes: grey or RGB (common display primaries) with the encoding's tone curve.
std::string icc_profile(const EncodingSettings& settings);

}  // namespace filmsim
