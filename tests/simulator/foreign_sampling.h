// Random foreign laws, films and files.
#pragma once

#include "simulator/foreign_laws.h"
#include "simulator/roll_sampling.h"
#include "simulator/scenario.h"

namespace filmsim {

/// Curves of foreign families, bases and veils of any colour, faults more often and greater than
/// any prior has them: very thin and very dense rolls among them.
Roll sample_foreign_roll(FilmFormat format, Random& random);

/// Directed light on silver, lamp, mask, lens of a scanner.
ForeignLaws sample_scanner_laws(Random& random);

/// A camera over a makeshift light panel, its picture not finished yet.
ForeignLaws sample_camera_laws(Random& random);

/// Colour of a makeshift lamp: white, warm, yellow, blue, or one or two narrow bands.
Rgb sample_lamp_colour(Random& random);

/// What software makes of a picture under such a lamp.
FinishedPicture sample_finish(const Rgb& lamp, Random& random);

/// Eight bits, mostly JPEG, metadata absent or lying.
EncodingSettings sample_camera_encoding(Random& random);

/// Any file that a scanner's program writes, with a resolution tag that lies more often than not.
EncodingSettings sample_foreign_encoding(Random& random);

}  // namespace filmsim
