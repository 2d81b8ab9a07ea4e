#pragma once

#include <fogline/base/known.h>

#include <optional>
#include <vector>

namespace fogline {

/// A frame of an even target as read, in the order of the film.
struct BracketFrame {
  /// Piece of film that it lies on; frames of one piece follow one another.
  int strip = 0;
  double density = 0.0;
  /// Standard uncertainty of that one alone, and what the card leaves of its exposure's doubt,
  /// stops.
  double density_doubt = 0.0;
  /// Between light and dark parts: a picture's is wide.
  double spread = 0.0;
};

/// Which exposure each frame got.
struct BracketAlignment {
  /// Index into the exposures for each frame; -1: none, a frame outside the bracket.
  std::vector<int> exposure_of_frame;
  /// For each frame: its piece of film lies the other way round.
  std::vector<bool> turned_of_frame;
  /// Another way round fits nearly as well and would give other exposures.
  std::optional<WhyUnknown> ambiguity;
};

/// Lays exposures (`stops`, in the order in which they were made) on the frames: each piece of film
/// may lie either way round, the pieces in either order, pictures may come before and after, and
/// the least exposed frames may not show. Density must not fall as exposure rises: the way that an
/// isotonic regression (Barlow et al. 1972) fits best is taken. `doubt_stops`: standard uncertainty
/// of each exposure. `first_frame`: index of the frame that begins the bracket, -1 where unknown.
/// Absent where no way fits.
Known<BracketAlignment> align_bracket(const std::vector<double>& stops,
                                      const std::vector<BracketFrame>& frames, double doubt_stops,
                                      int first_frame = -1);

}  // namespace fogline
