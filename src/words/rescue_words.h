#pragma once

#include <fogline/process/advice.h>

#include <string>

namespace fogline {

/// A step in full: what to do and what explains it.
std::string step_sentence(const Fact<RescueStep>& step);

/// What is done alone, for a short list.
std::string short_step_sentence(const Fact<RescueStep>& step);

}  // namespace fogline
