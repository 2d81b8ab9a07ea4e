#pragma once

#include "page/draw/element.h"

#include <fogline/process/judge_roll.h>
#include <fogline/sensitometry/sensitometry.h>

namespace fogline {

/// The characteristic curve over stops and log exposure: steps with their doubt, band, the two arcs
/// with the line that is the contrast index, the ISO 6 triangle, zones, and the curve that the same
/// film would have, developed to the aim.
Element curve_figure(const Sensitometry& read, const Aim& aim);

}  // namespace fogline
