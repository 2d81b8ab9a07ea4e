#pragma once

#include "film/film_layout.h"
#include "film/straight_strip.h"
#include "film/strips/clear_level.h"

namespace fogline {

/// The rectangle that certainly holds the whole strip: its width and a margin across, the image's
/// extent along.
FilmExtent widest_extent(const FilmStrip& film, int image_width_px, int image_height_px,
                         double half_width_mm);

/// Finds how much of a perforated strip is in sight: walks out from the perforations until film
/// gives way to bare light, an opaque holder or the image border, and writes it into the strip with
/// what surrounds it.
void find_film_extent(FilmStrip& film, const ClearLevel& level);

/// Share of the inner rebate, between frames and perforations, that reads as clear film, on the
/// better side of the strip. Film has it nearly everywhere; rows of windows in a picture don't.
double clear_rebate_share(const FilmStrip& film, const ClearLevel& level);

/// Finds fogged film at the ends of a perforated strip whose extent is known, by its dense rebate.
void find_leaders(FilmStrip& film, const ClearLevel& level);

}  // namespace fogline
