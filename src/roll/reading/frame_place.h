#pragma once

#include "density/density_strip.h"
#include "film/film_layout.h"
#include "roll/reading/scan_reading.h"

namespace fogline {

/// Where a frame lies in the scan: its upright box, its corners clockwise from top left.
FrameMeasurement frame_place(const FilmFrame& frame, const FilmMap& map, int number, int strip);

/// Mean densities of an area on a mesh of 16 along and 12 across.
FrameSketch sketch_of(const DensityStrip& density, const FilmExtent& area);

}  // namespace fogline
