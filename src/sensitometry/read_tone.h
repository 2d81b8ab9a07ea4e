#pragma once

#include "density/density_strip.h"
#include "film/film_layout.h"

#include <fogline/density/doubt.h>
#include <fogline/sensitometry/film_tones.h>

#include <optional>

namespace fogline {

/// Part of a frame that tone is read from: the frame less 0.7 mm along its border. Nothing is left
/// of very narrow pieces.
std::optional<FilmExtent> tone_area(const FilmFrame& frame);

/// The tone of a frame that can't be read, and why.
FrameTone unread_tone(Unknown why);

/// Reads a frame's tone over `area`. `base` is base plus fog (net density is silver and carries the
/// doubt of the angle of light). Values darker than `limit` are told as lower bounds.
FrameTone read_tone(const DensityStrip& density, const FilmExtent& area, double base,
                    const DoubtSources& doubt, double limit);

}  // namespace fogline
