#include "simulator/foreign_scenarios.h"

#include "simulator/device_sampling.h"
#include "simulator/foreign_sampling.h"
#include "simulator/layout_sampling.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace filmsim {
namespace {

bool along_x(const Scenario& scenario) {
  return scenario.strips.front().geometry.axis == FilmAxis::kX;
}

StripLayout foreign_layout(Random& random) {
  StripLayout layout;
  layout.axis = random.chance(0.6) ? FilmAxis::kX : FilmAxis::kY;
  layout.frames = random.integer(1, 4);
  layout.blank_chance = random.chance(0.15) ? 0.3 : 0.0;
  layout.wide_gap_chance = 0.25;
  layout.rotation_sd_deg = 0.9;
  return layout;
}

// Strips on a scanner with foreign laws.
Scenario on_scanner(Random& random, int strips, const StripLayout& layout, double pixels_per_mm) {
  Scenario s;
  s.pixels_per_mm = pixels_per_mm;
  const Roll roll = sample_foreign_roll(layout.format, random);
  for (int i = 0; i < strips; ++i) s.strips.push_back(lay_out_strip(roll, layout, random));
  s.scanner = sample_scanner(random.chance(0.8) ? Device::kFlatbed : Device::kFilmScanner, random);
  s.foreign = sample_scanner_laws(random);
  s.encoding = sample_foreign_encoding(random);
  arrange_on_glass(s, random.uniform(2.0, 8.0), random.uniform(1.5, 6.0));
  return s;
}

// Turns a scan on glass into a camera's picture of the same film.
void take_with_camera(Scenario& s, Random& random) {
  s.camera = sample_camera(random);
  s.scanner = sample_scanner(Device::kCamera, random);
  s.scanner.lamp = sample_lamp_colour(random);
  s.scanner.tilt_x = s.scanner.tilt_y = {};
  s.scanner.bare_level = random.chance(0.15) ? random.uniform(1.0, 1.8) : random.uniform(0.3, 0.97);
  s.scanner.sharpening = 0.0;
  s.foreign = sample_camera_laws(random);
  s.foreign->finish = sample_finish(s.scanner.lamp, random);
  s.encoding = sample_camera_encoding(random);
}

// So many pixels as the picture has, whatever it shows.
void set_pixels(Scenario& s, double along_mm, double across_mm, Random& random) {
  const double pixels =
      random.chance(0.9) ? random.log_uniform(1.2e6, 6e6) : random.uniform(8e6, 1.6e7);
  s.pixels_per_mm = std::sqrt(pixels / (along_mm * across_mm));
  const bool x = along_x(s);
  s.width_px = static_cast<int>((x ? along_mm : across_mm) * s.pixels_per_mm);
  s.height_px = static_cast<int>((x ? across_mm : along_mm) * s.pixels_per_mm);
}

HolderWindow window_on(const StripPlan& strip, double along_mm, double across_mm, Point size_mm) {
  const bool x = strip.geometry.axis == FilmAxis::kX;
  const Point middle = strip.geometry.middle_mm;
  HolderWindow window;
  window.middle_mm = x ? Point{middle.x + along_mm, middle.y + across_mm}
                       : Point{middle.x + across_mm, middle.y + along_mm};
  window.width_mm = x ? size_mm.x : size_mm.y;
  window.height_mm = x ? size_mm.y : size_mm.x;
  return window;
}

// The panel ends within the picture, or the room shows beside it.
void end_the_panel(Scenario& s, Random& random) {
  const double width = s.width_px / s.pixels_per_mm;
  const double height = s.height_px / s.pixels_per_mm;
  HolderWindow panel;
  panel.middle_mm = {random.normal(0.0, 0.05) * width, random.normal(0.0, 0.05) * height};
  panel.width_mm = width * random.uniform(0.85, 1.1);
  panel.height_mm = height * random.uniform(0.85, 1.1);
  panel.corner_radius_mm = random.uniform(0.5, 5.0);
  s.holder.present = true;
  s.holder.windows.push_back(panel);
}

Scenario foreign_camera(Random& random) {
  Scenario s;
  StripLayout layout = foreign_layout(random);
  const int frames = random.chance(0.45) ? 1 : random.integer(2, 4);
  // Mostly the film runs past the picture's borders; else its ends show.
  const bool ends_show = random.chance(0.3);
  layout.frames = frames + (ends_show ? 0 : 2);
  layout.rotation_sd_deg = 1.2;
  s.strips = {lay_out_strip(sample_foreign_roll(FilmFormat::k135, random), layout, random)};
  StripPlan& strip = s.strips.front();
  const std::size_t first = ends_show ? 0 : 1;
  const std::size_t last = first + static_cast<std::size_t>(frames) - 1;
  const double look = 0.5 * (strip.frames[first].middle_u_mm + strip.frames[last].middle_u_mm) +
                      random.normal(0.0, 1.0);
  const double along_shift = 0.5 * strip.geometry.length_mm - look;
  const double across_shift = random.normal(0.0, 1.0);
  strip.geometry.middle_mm =
      along_x(s) ? Point{along_shift, across_shift} : Point{across_shift, along_shift};
  const double along = frames * 38.0 + random.uniform(2.0, 16.0);
  const double across =
      random.chance(0.6) ? random.uniform(36.0, 44.0) : random.uniform(44.0, 70.0);
  set_pixels(s, along, across, random);
  take_with_camera(s, random);
  if (random.chance(0.3)) end_the_panel(s, random);
  return s;
}

Scenario foreign_strip(Random& random) {
  Scenario s =
      on_scanner(random, random.integer(1, 2), foreign_layout(random), random.uniform(8.0, 13.0));
  if (random.chance(0.35)) put_in_holder(s, HolesShown::kWhole, random);
  if (random.chance(0.25)) {
    // The picture's border cuts the film, and mostly a frame.
    int& length = along_x(s) ? s.width_px : s.height_px;
    length = static_cast<int>(length * random.uniform(0.6, 0.95));
  }
  return s;
}

// One row of holes covered wholly or partly, or by tape that lets light through; bars across.
Scenario foreign_holder(Random& random) {
  StripLayout layout = foreign_layout(random);
  layout.frames = random.integer(2, 4);
  layout.rotation_sd_deg = 0.3;
  Scenario s = on_scanner(random, 1, layout, random.uniform(8.0, 13.0));
  const StripPlan& strip = s.strips.front();
  const double length = strip.geometry.length_mm;
  const double side = random.chance(0.5) ? 1.0 : -1.0;
  const double covered_mm = random.uniform(1.5, 6.0);  // from one edge of the film
  s.holder.present = true;
  const double across = 40.0;
  const bool tape = random.chance(0.25);
  const double shift = tape ? 0.0 : side * (0.5 * (across - k135WidthMm) + covered_mm);
  s.holder.windows.push_back(
      window_on(strip, 0.0, -shift, {length + random.uniform(-3.0, 3.0), across}));
  if (tape) {
    const double from_middle = 0.5 * k135WidthMm - 0.5 * covered_mm;
    s.holder.bars.push_back({window_on(strip, 0.0, side * from_middle, {length + 10.0, covered_mm}),
                             random.uniform(0.1, 0.4)});
  }
  const int bars = random.chance(0.5) ? random.integer(1, 3) : 0;
  for (int i = 0; i < bars; ++i) {
    const double along = random.uniform(-0.5, 0.5) * length;
    s.holder.bars.push_back({window_on(strip, along, 0.0, {random.uniform(1.5, 6.0), 60.0}), 0.0});
  }
  return s;
}

Scenario foreign_sheet(Random& random) {
  StripLayout layout;
  layout.format = FilmFormat::kSheet;
  layout.axis = random.chance(0.6) ? FilmAxis::kX : FilmAxis::kY;
  layout.frames = 1;
  layout.frame_length_mm = kSheetLengthMm - 2.0 * kSheetRebateMm - random.uniform(0.0, 4.0);
  layout.frame_width_mm = kSheetWidthMm - 2.0 * kSheetRebateMm - random.uniform(0.0, 2.0);
  Scenario s = on_scanner(random, 1, layout, random.uniform(8.0, 11.0));
  StripPlan& strip = s.strips.front();
  strip.edge_print = false;
  strip.geometry.length_mm = kSheetLengthMm;
  strip.geometry.bow_mm = 0.0;
  strip.geometry.notch = random.chance(0.7);
  strip.frames[0].middle_u_mm = 0.5 * kSheetLengthMm + random.uniform(-1.0, 1.0);
  strip.frames[0].middle_v_mm = random.uniform(-0.5, 0.5);
  arrange_on_glass(s, 0.0, random.uniform(2.0, 10.0));
  if (random.chance(0.4)) take_with_camera(s, random);
  return s;
}

struct RollFilm {
  FilmFormat format;
  double length_mm, width_mm;      // of its frames
  double least_gap, greatest_gap;  // between them
  double pixels_per_mm;            // fewest
};

RollFilm sample_roll_film(Random& random) {
  constexpr std::array<double, 4> kLengthsMm = {41.5, 56.0, 70.0, 84.0};
  const double pick = random.uniform();
  if (pick < 0.2) return {FilmFormat::k127, random.chance(0.5) ? 40.0 : 60.0, 40.0, 2.0, 6.0, 9.0};
  if (pick < 0.4) return {FilmFormat::k110, 17.0, 13.0, 6.0, 9.0, 16.0};
  const double length = kLengthsMm[static_cast<std::size_t>(random.integer(0, 3))];
  return {FilmFormat::k120, length, random.uniform(55.0, 56.5), 2.0, 10.0, 8.0};
}

// Roll film without holes: its frames, its edge and bare light beside it are all there is.
Scenario foreign_medium(Random& random) {
  const RollFilm film = sample_roll_film(random);
  StripLayout layout;
  layout.format = film.format;
  layout.axis = random.chance(0.6) ? FilmAxis::kX : FilmAxis::kY;
  layout.frame_length_mm = film.length_mm;
  layout.frame_width_mm = film.width_mm;
  layout.frames = random.integer(1, film.length_mm > 60.0 ? 2 : 3);
  Scenario s = on_scanner(random, 1, layout, film.pixels_per_mm * random.uniform(1.0, 1.4));
  StripPlan& strip = s.strips.front();
  double u = random.uniform(1.0, 6.0);
  for (FramePlan& frame : strip.frames) {
    frame.middle_u_mm = u + 0.5 * frame.length_mm;
    frame.middle_v_mm = random.uniform(-0.5, 0.5);
    u += frame.length_mm + random.uniform(film.least_gap, film.greatest_gap);
  }
  strip.geometry.length_mm = u - random.uniform(0.5, 1.5);
  strip.edge_print = film.format == FilmFormat::k120;
  arrange_on_glass(s, 0.0, random.uniform(2.0, 8.0));
  if (random.chance(0.4)) take_with_camera(s, random);
  return s;
}

Scenario foreign_unfit(Random& random) {
  Scenario s = foreign_camera(random);
  switch (random.integer(0, 3)) {
    case 0:  // the bare panel
      s.strips.clear();
      break;
    case 1: {  // a photograph or a slide
      s.positive_picture = s.strips.front().frames.front().scene;
      s.strips.clear();
      break;
    }
    case 2: {  // exposed for the pictures: clear film is beyond the sensor's end in all channels
      const Rgb clear = clear_density(s.strips.front().stock);
      s.scanner.lamp = {1.0, 1.0, 1.0};
      s.foreign->finish = sample_finish(s.scanner.lamp, random);
      s.foreign->finish->toe_lift = 0.0;
      s.foreign->lamp = {};
      const double densest = *std::max_element(clear.begin(), clear.end());
      s.scanner.bare_level = random.uniform(1.5, 3.0) * std::pow(10.0, densest);
      break;
    }
    default:  // a positive made of the negative
      s.encoding.inverted = true;
      break;
  }
  return s;
}

}  // namespace

const std::vector<std::pair<std::string, std::function<Scenario(Random&)>>>& foreign_samplers() {
  static const std::vector<std::pair<std::string, std::function<Scenario(Random&)>>> kSamplers = {
      {"foreign-camera", foreign_camera}, {"foreign-strip", foreign_strip},
      {"foreign-holder", foreign_holder}, {"foreign-sheet", foreign_sheet},
      {"foreign-medium", foreign_medium}, {"foreign-unfit", foreign_unfit}};
  return kSamplers;
}

}  // namespace filmsim
