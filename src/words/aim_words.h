#pragma once

#include <fogline/process/light_and_development.h>

#include <string>

namespace fogline {

/// Where an aim comes from: "the usual aim for diffusion light", "the aim on your roll card".
std::string aim_source_words(const Aim& aim);

}  // namespace fogline
