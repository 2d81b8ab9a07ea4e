// Where frames come to lie on strips, strips in the picture, and what a holder hides.
#pragma once

#include "simulator/roll_sampling.h"

namespace filmsim {

/// How one strip is filled; defaults are an ordinary strip of 135 film.
struct StripLayout {
  FilmFormat format = FilmFormat::k135;
  FilmAxis axis = FilmAxis::kX;
  int frames = 3;
  double frame_length_mm = 0.0;  ///< 0: the roll's gate
  double frame_width_mm = 0.0;
  double blank_chance = 0.0;     ///< for each frame
  double overlap_chance = 0.0;   ///< that a gap is -3 to 0 mm
  double wide_gap_chance = 0.1;  ///< that a gap is anywhere between 0.5 and 3 mm
  double rotation_sd_deg = 0.5;
  bool leader = false;
};

/// Frames, length, holes, print, small bends and dirt; placed at the picture's middle.
StripPlan lay_out_strip(const Roll& roll, const StripLayout& layout, Random& random);

/// A little dust, a fibre, as on any film.
void add_everyday_dirt(StripPlan& strip, double pieces_mean, Random& random);

/// Puts the strips beside each other and makes the picture large enough for them with `margin_mm`
/// of glass around; all strips have the same axis.
void arrange_on_glass(Scenario& scenario, double gap_mm, double margin_mm);

/// How much of a 135 strip's holes a holder shows.
enum class HolesShown { kWhole, kPartly, kNone };

/// One long window over each strip.
void put_in_holder(Scenario& scenario, HolesShown holes, Random& random);
/// One window over each frame.
void put_in_frame_holder(Scenario& scenario, Random& random);

}  // namespace filmsim
