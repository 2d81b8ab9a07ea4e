#pragma once

#include "film/film_layout.h"
#include "film/strips/finding_image.h"

#include <vector>

namespace fogline {

/// Adds the perforations that a strip's lattice predicts and the picture shows, though no whole
/// spot was found there: cut by the image border, torn, dirty. Bright as the others in the middle,
/// with film beside them.
void add_predicted_holes(FilmStrip& strip, const FindingImage& image);

/// Two pieces of film never lie on one another: where the holes of one strip lie within the width
/// of another, both are one strip whose rows broke (perspective, dirt) or one is an accident. The
/// strip with more holes keeps what fits of the other.
std::vector<FilmStrip> strips_apart(std::vector<FilmStrip> strips);

}  // namespace fogline
