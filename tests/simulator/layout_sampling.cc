#include "simulator/layout_sampling.h"

#include <algorithm>
#include <cmath>

namespace filmsim {
namespace {

double sample_gap(const Roll& roll, const StripLayout& layout, Random& random) {
  if (random.chance(layout.overlap_chance)) return random.uniform(-3.0, 0.0);
  if (random.chance(layout.wide_gap_chance)) return random.uniform(0.5, 3.0);
  return std::clamp(random.normal(roll.gap_mean_mm, roll.gap_sd_mm), 0.5, 3.0);
}

void place_frames(StripPlan& strip, const Roll& roll, const StripLayout& layout, double start_mm,
                  Random& random) {
  double u = start_mm;
  for (int i = 0; i < layout.frames; ++i) {
    FramePlan frame = sample_frame(roll, random);
    if (layout.frame_length_mm > 0.0) frame.length_mm = layout.frame_length_mm;
    if (layout.frame_width_mm > 0.0) frame.width_mm = layout.frame_width_mm;
    frame.blank = random.chance(layout.blank_chance);
    frame.middle_u_mm = u + 0.5 * frame.length_mm;
    strip.frames.push_back(frame);
    u += frame.length_mm + sample_gap(roll, layout, random);
  }
}

double glass_length(const StripPlan& strip) {
  return strip.geometry.length_mm * (1.0 - strip.geometry.shrinkage);
}

double glass_width(const StripPlan& strip) {
  return film_width_mm(strip.geometry.format) * (1.0 - strip.geometry.shrinkage);
}

double window_across_mm(HolesShown holes, Random& random) {
  switch (holes) {
    case HolesShown::kWhole:
      return random.uniform(31.6, 35.0);
    case HolesShown::kPartly:
      return random.uniform(26.5, 30.2);
    case HolesShown::kNone:
      return random.uniform(24.5, 25.2);
  }
  return 0.0;
}

HolderWindow window_at(const StripPlan& strip, double along_mm, double length_mm, double across_mm,
                       double shift_across_mm) {
  const bool x = strip.geometry.axis == FilmAxis::kX;
  const Point middle = strip.geometry.middle_mm;
  HolderWindow window;
  window.middle_mm = x ? Point{middle.x + along_mm, middle.y + shift_across_mm}
                       : Point{middle.x + shift_across_mm, middle.y + along_mm};
  window.width_mm = x ? length_mm : across_mm;
  window.height_mm = x ? across_mm : length_mm;
  return window;
}

}  // namespace

void add_everyday_dirt(StripPlan& strip, double pieces_mean, Random& random) {
  const int pieces = static_cast<int>(random.uniform(0.0, 2.0 * pieces_mean + 1.0));
  const double width = film_width_mm(strip.geometry.format);
  for (int i = 0; i < pieces; ++i) {
    MarkPlan mark;
    const bool fibre = random.chance(0.25);
    mark.kind = fibre ? MarkKind::kFibre : MarkKind::kDust;
    mark.middle_mm = {random.uniform(0.0, strip.geometry.length_mm), random.uniform(0.0, width)};
    mark.size_mm = fibre ? random.uniform(0.7, 4.0) : random.log_uniform(0.05, 0.4);
    mark.width_mm = random.uniform(0.012, 0.03);
    mark.angle_deg = random.uniform(0.0, 180.0);
    mark.strength = random.uniform(0.5, 2.0);
    mark.seed = random.next() >> 1U;
    strip.marks.push_back(mark);
  }
}

StripPlan lay_out_strip(const Roll& roll, const StripLayout& layout, Random& random) {
  StripPlan strip;
  strip.stock = roll.stock;
  StripGeometrySettings& g = strip.geometry;
  g.format = layout.format;
  g.axis = layout.axis;
  strip.leader_mm = layout.leader ? random.uniform(8.0, 30.0) : 0.0;
  const double start =
      layout.leader ? strip.leader_mm + random.uniform(4.0, 9.0) : random.uniform(0.4, 1.8);
  place_frames(strip, roll, layout, start, random);
  const FramePlan& last = strip.frames.back();
  g.length_mm = last.middle_u_mm + 0.5 * last.length_mm + random.uniform(0.4, 1.8);
  if (layout.leader && random.chance(0.5)) g.tongue_mm = 0.8 * strip.leader_mm;
  g.hole_phase_mm = random.uniform(0.0, k135PitchMm);
  g.rotation_deg = std::clamp(random.normal(0.0, layout.rotation_sd_deg), -3.0, 3.0);
  g.shrinkage = random.uniform(0.0, 0.003);
  g.bow_mm = random.normal(0.0, 0.12) * g.length_mm / 150.0;
  strip.first_frame_number = random.integer(1, 30);
  strip.print_turned = random.chance(0.5);
  strip.edge_shade = random.chance(0.6) ? random.uniform(0.05, 0.4) : 0.0;
  if (layout.format == FilmFormat::k135 && random.chance(0.1)) {
    strip.surge_density = random.uniform(0.02, 0.12);
  }
  add_everyday_dirt(strip, 4.0, random);
  return strip;
}

void arrange_on_glass(Scenario& scenario, double gap_mm, double margin_mm) {
  const bool x = scenario.strips.front().geometry.axis == FilmAxis::kX;
  double across = 0.0;
  double along = 0.0;
  for (StripPlan& strip : scenario.strips) {
    // A turned strip needs a little more room.
    const double turned = std::abs(strip.geometry.rotation_deg) * 0.01745 * glass_length(strip);
    along = std::max(along, glass_length(strip));
    const double room = glass_width(strip) + turned;
    const double middle = across + 0.5 * room;
    (x ? strip.geometry.middle_mm.y : strip.geometry.middle_mm.x) = middle;
    across += room + gap_mm;
  }
  across -= gap_mm;
  for (StripPlan& strip : scenario.strips) {
    (x ? strip.geometry.middle_mm.y : strip.geometry.middle_mm.x) -= 0.5 * across;
  }
  const auto pixels = [&](double mm) {
    return std::max(16, static_cast<int>(std::lround(mm * scenario.pixels_per_mm)));
  };
  scenario.width_px = pixels((x ? along : across) + 2.0 * margin_mm);
  scenario.height_px = pixels((x ? across : along) + 2.0 * margin_mm);
}

void put_in_holder(Scenario& scenario, HolesShown holes, Random& random) {
  const double across = window_across_mm(holes, random);
  scenario.holder.present = true;
  for (const StripPlan& strip : scenario.strips) {
    // A window that ends before the strip does, or no bare light would be hidden.
    const double length = glass_length(strip) - random.uniform(1.0, 3.0);
    // Film lies with some play: at most what keeps whole holes whole.
    const double play = holes == HolesShown::kWhole ? std::min(0.3, 0.5 * (across - 31.2)) : 0.3;
    scenario.holder.windows.push_back(
        window_at(strip, 0.0, length, across, random.uniform(-play, play)));
  }
}

void put_in_frame_holder(Scenario& scenario, Random& random) {
  const double across = random.uniform(24.5, 25.2);
  scenario.holder.present = true;
  for (const StripPlan& strip : scenario.strips) {
    const double scale = 1.0 - strip.geometry.shrinkage;
    for (const FramePlan& frame : strip.frames) {
      const double along = (frame.middle_u_mm - 0.5 * strip.geometry.length_mm) * scale;
      scenario.holder.windows.push_back(
          window_at(strip, along, random.uniform(36.8, 37.4), across, random.uniform(-0.3, 0.3)));
    }
  }
}

}  // namespace filmsim
